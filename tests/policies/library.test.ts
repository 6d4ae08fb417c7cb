import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/experiment/simulate.ts';
import { MEASURES } from '../../src/line/measures.ts';
import { parseJoined, parseScenario } from '../../src/scenario/parse.ts';
import type { Estimate } from '../../src/statistics/estimate.ts';
import { meanInterval } from '../../src/statistics/mean-interval.ts';
import type { Pair, Situation } from './cell.ts';
import { gauging } from './gauging.ts';
import { retuning } from './retuning.ts';
import { shortages } from './shortages.ts';
import { stopping } from './stopping.ts';

const pairs: Readonly<Record<string, Pair>> = { ...stopping, ...retuning, ...gauging, ...shortages };

const folder = new URL('../../scenarios/policies/', import.meta.url);
const shipped = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => file.replace(/\.yaml$/, ''));
const textOf = (name: string) => readFileSync(new URL(`${name}.yaml`, folder), 'utf8');

const SEEDS = 12;

/** By how much the policy is better than carrying on, run by run under the same seed, with its 99 % interval. */
function gain(name: string, { line, by }: Situation): Estimate {
  const { scenario } = parseJoined({ source: 'cell.yaml', text: line }, [
    { source: `${name}.yaml`, text: textOf(name) },
  ]);
  const [base, policy] = scenario.policies.map((each) => each.name);
  const sign = MEASURES.find(({ key }) => key === by)!.better === 'higher' ? 1 : -1;
  const gains = Array.from({ length: SEEDS }, (_, i) => {
    const [one, other] = [policy!, base!].map((each) => simulate(scenario, each, i + 1).measures[by]!);
    return sign * (one! - other!);
  });
  return meanInterval(gains, 0.99);
}

describe('the library of policies', () => {
  it('has ten at least', () => {
    expect(shipped.length).toBeGreaterThanOrEqual(10);
  });

  it('joins to the demo, with what some of them ask for', () => {
    const demo = readFileSync(new URL('../tray-cell.yaml', folder), 'utf8');
    const sizes = 'groove: { nominal: 120.35 mm }, notch: { nominal: 18.05 mm }';
    const text = demo.replace(
      '  frame:\n',
      `  second frame: { unlimited: true, stands-in-for: frame, features: { ${sizes} } }
  frame:
    expedite: { lead-time: 30 min, price: 0.5 }
`,
    );
    const line = { source: 'demo.yaml', text };
    const alone = parseScenario(text, 'demo.yaml').policies;
    const { scenario } = parseJoined(
      line,
      shipped.map((name) => ({ source: name, text: textOf(name) })),
    );
    expect(scenario.policies.length).toBe(alone.length + shipped.length);
  });

  it('says of each when it should help and hurt, and shows both', () => {
    expect(Object.keys(pairs).sort()).toEqual([...shipped].sort());
    expect(
      shipped.filter((name) => !/^helps: /m.test(textOf(name)) || !/^hurts: /m.test(textOf(name))),
    ).toEqual([]);
  });
});

describe.each(Object.entries(pairs))('%s', (name, { helps, hurts }) => {
  it('helps where its file says so', () => {
    expect(gain(name, helps).lower).toBeGreaterThan(0);
  });

  it('hurts where its file says so', () => {
    expect(gain(name, hurts).upper).toBeLessThan(0);
  });
});
