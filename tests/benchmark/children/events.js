// FILE SECONDS SEEDS ROUNDS: seconds per event of every policy of a scenario, by turns, in one warm process. SECONDS
// may be "-" for the scenario's own length. The first round only warms the compiler up.
import { simulate } from '../../../.build/experiment/simulate.js';
import { load, seconds } from '../common/load.js';

const [file, length, seeds, rounds] = process.argv.slice(2);
const scenario = load(file, length === '-' ? undefined : Number(length));
const found = Object.fromEntries(scenario.policies.map(({ name }) => [name, []]));
for (let round = 0; round <= Number(rounds); round++) {
  for (const { name } of scenario.policies) {
    let events = 0;
    const took = seconds(() => {
      for (let seed = 1; seed <= Number(seeds); seed++) events += simulate(scenario, name, seed).events;
    });
    if (round > 0) found[name].push({ events, seconds: took });
  }
}
console.log(JSON.stringify(found));
