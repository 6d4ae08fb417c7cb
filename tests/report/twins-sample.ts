import { planTwins } from '../../src/experiment/plan.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { compareTwins, type Twins } from '../../src/experiment/twins.ts';
import { variantOf } from '../../src/experiment/variant.ts';
import { small } from '../line/small-line.ts';

/** Hostile on purpose. */
export const STOP = 'a <stop> & "more"';
export const POLICIES = ['carry on', 'a name <that> goes on and on until it has to be cut'];

/** A line of chance that stands still for 30 min, at times that differ from seed to seed, under two policies alike. */
export function sampleTwins(seeds: number, last = '5 h'): Twins {
  const scenario = small(
    last,
    `
stock:
  blank: { unlimited: true }
stations:
  only: { does: work, takes: blank, cycle: { distribution: exponential, mean: 10 s }, to: good }
disturbances:
  ${JSON.stringify(STOP)}:
    { disturbs: station, station: only, at: { distribution: uniform, low: 2 h, high: 3 h }, for: 30 min }
policies:
${POLICIES.map((name) => `  ${JSON.stringify(name)}: []`).join('\n')}
`,
  );
  const outcomes = planTwins(POLICIES, seeds).map(({ policy, seed, variant, course }) =>
    simulate(variantOf(scenario, variant), policy, seed, course),
  );
  const pairs = outcomes.flatMap((run, i) => (i % 2 === 0 ? [{ run, twin: outcomes[i + 1]! }] : []));
  return compareTwins(POLICIES, pairs, scenario.run);
}
