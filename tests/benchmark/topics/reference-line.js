// Part visits per second on the reference line, all measures on, against two programs of the same line.
import { child, REFERENCE } from '../common/files.js';
import { cppPeer, pythonPeer } from '../common/peers.js';
import { heading, remark, row } from '../common/table.js';
import { inTurns, meanOf, median, spread } from '../common/timing.js';

const ROUNDS = 7;
/** Programs of one line agree at least so well in throughput. */
const AGREE = 0.01;

const OURS = 'mendline';
const PEERS = [
  // The figures to reach are ours over theirs; the lengths (s of the line's time) take each program about as long.
  { name: 'C++ -O3', find: cppPeer, length: 3_000_000, least: 0.5 },
  { name: 'Python, SimPy', find: pythonPeer, length: 200_000, least: 25 },
];

const rate = ({ visits, seconds }) => visits / seconds;

/** The largest difference between two programs' mean state shares, over stations and states. */
function shareGap(ours, theirs) {
  const share = (runs, station, state) => meanOf(runs.map((run) => run.shares[station][state])).mean;
  return Math.max(
    ...theirs[0].shares.flatMap((states, station) =>
      Object.keys(states).map((state) =>
        Math.abs(share(ours, station, state) - share(theirs, station, state)),
      ),
    ),
  );
}

export async function referenceLine() {
  heading('Reference line: five stations, all measures on, one core');
  const takes = {};
  const present = [];
  for (const peer of PEERS) {
    const run = await peer.find();
    if (!run) {
      remark(`${peer.name}: not installed here, skipped`);
      continue;
    }
    present.push(peer);
    takes[peer.name] = (seed) => run(peer.length, seed);
  }
  takes[OURS] = (seed) => child('reference-run', REFERENCE, 3_000_000, seed);
  const found = await inTurns(ROUNDS, takes);

  for (const [name, runs] of Object.entries(found)) {
    const rates = runs.map(rate);
    row(name, median(rates) / 1e6, 'M part visits/s', { note: spread(rates) });
  }
  for (const { name, least } of present) {
    const ratio = median(found[OURS].map(rate)) / median(found[name].map(rate));
    row(`${OURS} over ${name}`, ratio, 'times', { least });
  }

  const throughput = Object.entries(found).map(([name, runs]) => ({
    name,
    ...meanOf(runs.map((run) => run.throughput)),
  }));
  for (const { name, mean, error } of throughput) {
    remark(`throughput, ${name.padEnd(43)} ${mean.toFixed(5)} /s, standard error ${error.toFixed(5)}`);
  }
  const ours = throughput.find(({ name }) => name === OURS);
  const faults = [];
  for (const { name, mean, error } of throughput) {
    if (name === OURS) continue;
    const apart = Math.abs(ours.mean - mean);
    const errors = apart / Math.hypot(error, ours.error);
    const points = 100 * shareGap(found[OURS], found[name]);
    remark(
      `${OURS} and ${name}: throughputs ${((100 * apart) / mean).toFixed(2)} % apart (${errors.toFixed(1)} standard errors), state shares at most ${points.toFixed(2)} points`,
    );
    if (apart > AGREE * mean) {
      faults.push(
        `the throughputs of ${OURS} (${ours.mean.toFixed(4)} /s) and ${name} (${mean.toFixed(4)} /s) differ by more than ${100 * AGREE} %: they do not run the same line, so their speeds cannot be compared`,
      );
    }
  }
  if (faults.length > 0) throw new Error(faults.join('\n'));
}
