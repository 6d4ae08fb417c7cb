// FILE SECONDS SEED: one run of the reference line, told as the peers tell theirs. Shorter runs before it warm the
// compiler up, as the first of many runs of a comparison do. The visits are counted on an equal run that is not timed.
import { prepare, simulate } from '../../../.build/experiment/simulate.js';
import { load, seconds } from '../common/load.js';

const [file, length, seed] = [process.argv[2], Number(process.argv[3]), Number(process.argv[4])];
const WARM_UPS = 4;
const scenario = load(file, length);
const policy = scenario.policies[0].name;

for (let other = 1; other <= WARM_UPS; other++) {
  simulate({ ...scenario, run: { ...scenario.run, length: length / WARM_UPS } }, policy, seed + other);
}
let outcome;
const took = seconds(() => {
  outcome = simulate(scenario, policy, seed);
});
const line = prepare(scenario, policy, seed);
line.calendar.run(length);
const machines = [...line.stations.values()].flatMap((station) => station.machines);
const visits = machines.reduce((sum, { finishedCycles }) => sum + finishedCycles, 0);

const { measures, stateShares, counts, events } = outcome;
console.log(
  JSON.stringify({
    visits,
    seconds: took,
    throughput: counts.good / length,
    workInProgress: measures.work_in_progress_parts,
    leadTime: measures.lead_time_s,
    shares: Object.values(stateShares),
    events,
  }),
);
