// FILE SECONDS SEED: one run of the reference line, told as the peers tell theirs. The visits are counted on an
// equal run before it, which is not timed and warms the compiler up.
import { prepare, simulate } from '../../../.build/experiment/simulate.js';
import { load, seconds } from '../common/load.js';

const [file, length, seed] = [process.argv[2], Number(process.argv[3]), Number(process.argv[4])];
const scenario = load(file, length);
const policy = scenario.policies[0].name;

const line = prepare(scenario, policy, seed);
line.calendar.run(length);
const machines = [...line.stations.values()].flatMap((station) => station.machines);
const visits = machines.reduce((sum, { finishedCycles }) => sum + finishedCycles, 0);

let outcome;
const took = seconds(() => {
  outcome = simulate(scenario, policy, seed);
});
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
