import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { lookedAt } from '../../src/experiment/looked.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { INSIDE, OUTSIDE } from '../../src/line/histogram.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { SOUND } from '../scenario/sample.ts';
import { gaugedCell, small } from './small-line.ts';

const looked = (scenario: Scenario, policy: string, seed: number, withCourse = false) =>
  simulate(scenario, policy, seed, withCourse, undefined, undefined, true);

const KITS = `
stock:
  clip: { on-hand: 40, reorder-at: 11, order: 30, lead-time: 130 s }
  pin: { on-hand: 30, reorder-at: 7, order: 17, lead-time: 90 s }
stations:
  arriving: { does: arrive, every: { distribution: exponential, mean: 9.7 s }, when-full: lost, to: joining }
  joining: { does: assemble, buffer: 6, takes: [clip, pin], cycle: { distribution: exponential, mean: 8.3 s }, fits: [], misfit: scrap, to: good }`;

describe('a look at a run', () => {
  const sound = parseScenario(SOUND, 'cell.yaml');
  const kits = small('20000 s', KITS, '111 s');
  const cases = [
    ...sound.policies.map(({ name }): [string, Scenario, string] => [name, sound, name]),
    ['mates taken as one', kits, 'carry on'] as [string, Scenario, string],
  ];

  it.each(cases)('leaves all that is counted as it is, to the last digit: %s', (_, scenario, policy) => {
    const { look, ...rest } = looked(scenario, policy, 3);
    expect(look).toBeDefined();
    expect(rest).toEqual(simulate(scenario, policy, 3));
    const { look: besides, ...course } = looked(scenario, policy, 3, true);
    expect(besides).toBeDefined();
    expect(course).toEqual(simulate(scenario, policy, 3, true));
  });

  it('counts each first attempt, and as outside the limits those that do not fit', () => {
    const close = parseScenario(
      SOUND.replace('least: 0.1 mm, most: 0.6 mm', 'least: 0.3 mm, most: 0.4 mm'),
      'a.yaml',
    );
    const [policy] = close.policies;
    const outcome = looked(close, policy!.name, 5);
    const found = lookedAt(close, [policy!.name], [outcome])!;
    const fits = found.sizes.filter(({ kind }) => kind === 'clearance').map(({ rows }) => rows[0]!);
    expect(fits).toHaveLength(1);
    const [{ counted, underLower, overUpper }] = fits as [(typeof fits)[number]];
    expect(counted).toBe(outcome.counts.firstAttempts);
    // Those with a flaw besides do not fit whatever their clearance.
    expect(underLower + overUpper).toBeLessThanOrEqual(counted - outcome.counts.firstFits);
    expect(underLower + overUpper).toBeGreaterThan(0);
  });
});

describe('levels', () => {
  it('are those of the moment, from the end of the warm-up on', () => {
    // A piece is taken at 0, 10, 20, ... s.
    const body = `
stock: { blank: { on-hand: 12 } }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }`;
    const { look } = looked(small('90 s', body), 'carry on', 1);
    const times = look!.stocks.blank!.map((_, i) => i * look!.every);
    expect(times.at(-1)).toBeCloseTo(90, 9);
    expect(look!.stocks.blank).toEqual(times.map((time) => 11 - Math.floor(time / 10 + 1e-9)));
    const late = looked(small('60 s', body, '30 s'), 'carry on', 1).look!;
    expect(late.stocks.blank![0]).toBe(8);
    expect(late.stocks.blank!.at(-1)).toBe(2);
  });

  it('are told of limited buffers and stocks only', () => {
    const body = `
stock: { blank: { unlimited: true } }
stations:
  quick: { does: work, takes: blank, cycle: 5 s, to: slow }
  slow: { does: trim, buffer: 3, cycle: 20 s, to: last }
  last: { does: trim, buffer: unlimited, cycle: 1 s, to: good }`;
    const { look } = looked(small('60 s', body), 'carry on', 1);
    expect(look!.stocks).toEqual({});
    expect(Object.keys(look!.buffers)).toEqual(['slow']);
    // The first part leaves at 5 s and goes on at once; others wait from 10, 15 and 20 s on, and as one is taken one follows.
    const level = (time: number) => (time < 10 ? 0 : time < 15 ? 1 : time < 20 ? 2 : 3);
    expect(look!.buffers.slow).toEqual(look!.buffers.slow!.map((_, i) => level(i * look!.every)));
  });
});

describe('sizes', () => {
  it('of a normal dimension lie as its distribution says (cumulative normal of jstat)', () => {
    const scenario = small('40000 s', gaugedCell({ rim: 'tolerance: 0.25 mm, own-sd: 0.1 mm' }));
    const outcomes = [1, 2, 3].map((seed) => looked(scenario, 'carry on', seed));
    const [rim] = lookedAt(scenario, ['carry on'], outcomes)!.sizes;
    const { from, width, rows, limits } = rim!;
    const { counts, counted, underLower, overUpper } = rows[0]!;
    expect(counts).toHaveLength(INSIDE + 2 * OUTSIDE);
    expect(from + OUTSIDE * width).toBeCloseTo(limits.lower, 9);
    expect(counted).toBeGreaterThan(11_900);
    const below = (size: number) => jstat.jStat.normal.cdf(size, 100, 0.1);
    // Within 4.5 standard errors of a binomial count, and where less than ten are expected, in sum with the tails.
    const agrees = (count: number, share: number) =>
      expect(Math.abs(count - counted * share)).toBeLessThan(4.5 * Math.sqrt(counted * share * (1 - share)));
    for (const [bin, count] of counts.entries()) {
      const share = below(from + (bin + 1) * width) - below(from + bin * width);
      if (share * counted >= 10) agrees(count, share);
    }
    agrees(underLower, below(limits.lower));
    agrees(overUpper, 1 - below(limits.upper));
  });
});
