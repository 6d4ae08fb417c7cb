// FILE SEEDS: the good assemblies of each policy under seeds 1 to SEEDS, without a bound, which is no policy.
import { simulate } from '../../../.build/experiment/simulate.js';
import { isBound } from '../../../.build/scenario/bound.js';
import { load } from '../common/load.js';

const [file, seeds] = process.argv.slice(2);
const scenario = load(file);
const under = (policy) =>
  Array.from({ length: Number(seeds) }, (_, i) => simulate(scenario, policy, i + 1).counts.good);
const policies = scenario.policies.filter((policy) => !isBound(policy));
console.log(JSON.stringify(Object.fromEntries(policies.map(({ name }) => [name, under(name)]))));
