import { simulate } from '../../src/experiment/simulate.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';

/** A scenario of `length` after `warmUp` from the sections in `body`; without policies in it, "carry on" is the only one. */
export function small(length: string, body: string, warmUp = '0 s'): Scenario {
  const head = `mendline: 1\ntitle: small\nabout: worked out by hand\n`;
  const run = `run: { warm-up: ${warmUp}, length: ${length}, seeds: 1 }\n`;
  const policies = /^policies:/m.test(body) ? '' : '\npolicies:\n  carry on: []\n';
  return parseScenario(`${head}${run}${body}${policies}`, 'small.yaml');
}

/** Its outcome under one policy and seed 1. */
export function ran(scenario: Scenario, policy = 'carry on', seed = 1): Outcome {
  return simulate(scenario, policy, seed);
}

/** An unlimited stock named blank, and the given stations. */
export const blanks = (stations: string): string => `
stock:
  blank: { unlimited: true }
stations:
${stations}`;
