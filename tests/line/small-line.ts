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

/** What a station did in a window of so many seconds: shares times the window, whole in cases worked out by hand. */
export function seconds(outcome: Outcome, station: string, window: number): Record<string, number> {
  return Object.fromEntries(
    Object.entries(outcome.stateShares[station]!)
      .map(([state, share]) => [state, Math.round(share * window * 1e6) / 1e6] as const)
      .filter(([, time]) => time !== 0),
  );
}

/** An unlimited stock named blank, and the given stations. */
export const blanks = (stations: string): string => `
stock:
  blank: { unlimited: true }
stations:
${stations}`;

/** Forms a tray every 10 s by a heater of 150 °C and gauges it within a second; the parameters are YAML. */
export const gaugedCell = ({
  rim = '',
  reading = 'repeatability: 0 mm',
  every = 1,
  inspection = '',
  buffer = 5,
  offLimits = 'pass',
  sheet = 'unlimited: true',
  more = '',
} = {}): string => `
stock:
  sheet: { ${sheet} }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, made-at: forming, gains: { heater: 0.1 mm/°C }${rim && `, ${rim}`} }
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 1
    cycle: 10 s
    settings:
      heater: { target: 150 °C }
    to: gauging
  gauging:
    does: gauge
    buffer: ${buffer}
    cycle: 1 s
    ${inspection || `every: ${every}`}${more && `\n    ${more}`}
    measures:
      rim: { ${reading} }
    off-limits: ${offLimits}
    to: good
`;
