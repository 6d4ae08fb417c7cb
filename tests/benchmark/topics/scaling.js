// How the time of an event grows with the stations of a line and with the length of a run.
import { child } from '../common/files.js';
import { longLine } from '../common/lines.js';
import { heading, row } from '../common/table.js';
import { inTurns, median, spread } from '../common/timing.js';

const ROUNDS = 5;
const FEWEST = 5;
const EVENTS = 3_000_000;

/** One run of `length` s in a fresh process, after an equal one that warms the compiler up. */
async function run(stations, length) {
  const [[{ events, seconds }]] = Object.values(await child('events', longLine(stations), length, 1, 1));
  return { events, cost: (seconds / events) * 1e6 };
}

/** How long, s, a line must run for about EVENTS events: one correction of a first guess, as longer lines fill longer. */
async function lengthFor(stations) {
  const guess = EVENTS / stations;
  const { events } = await run(stations, guess);
  return (guess * EVENTS) / events;
}

/** @param cases rows by name: stations and length, s */
async function show(cases, described = () => '') {
  const found = await inTurns(
    ROUNDS,
    Object.fromEntries(
      Object.entries(cases).map(([name, { stations, length }]) => [name, () => run(stations, length)]),
    ),
  );
  const base = median(Object.values(found)[0].map(({ cost }) => cost));
  for (const [name, runs] of Object.entries(found)) {
    const costs = runs.map(({ cost }) => cost);
    const times = (median(costs) / base).toFixed(2);
    row(`${name}, ${(runs[0].events / 1e6).toFixed(1)} M events`, median(costs), 's/M events', {
      note: `${times} x the first${described(cases[name])}; ${spread(costs)}`,
    });
  }
}

export async function scaling() {
  heading('Stations: about the same number of events on longer lines');
  const lines = {};
  for (const stations of [FEWEST, 50, 500]) {
    lines[`${stations} stations`] = { stations, length: await lengthFor(stations) };
  }
  await show(
    lines,
    ({ stations }) => ` (the logarithm ${(Math.log(stations) / Math.log(FEWEST)).toFixed(2)} x)`,
  );
  heading('Length: the five stations for longer');
  const { length } = lines[`${FEWEST} stations`];
  await show(
    Object.fromEntries(
      [1, 4, 16].map((times) => [`length x ${times}`, { stations: FEWEST, length: (length / 3) * times }]),
    ),
  );
}
