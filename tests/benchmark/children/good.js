// FILE SEEDS: the good assemblies of each policy under seeds 1 to SEEDS.
import { simulate } from '../../../.build/experiment/simulate.js';
import { load } from '../common/load.js';

const [file, seeds] = process.argv.slice(2);
const scenario = load(file);
const under = (policy) =>
  Array.from({ length: Number(seeds) }, (_, i) => simulate(scenario, policy, i + 1).counts.good);
console.log(JSON.stringify(Object.fromEntries(scenario.policies.map(({ name }) => [name, under(name)]))));
