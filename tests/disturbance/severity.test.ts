import { describe, expect, it } from 'vitest';
import { atSeverity, LEAST } from '../../src/disturbance/severity.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import type { Law } from '../../src/kernel/distributions/index.ts';
import type { Disturbing } from '../../src/scenario/disturbances.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, SOUND } from '../scenario/sample.ts';
import { EVERY } from './every-disturbance.ts';

const scenario = parseScenario(EVERY, 'cell.yaml');
const value = (law: Law | undefined) =>
  law?.distribution === 'constant' ? Number(law.value.toFixed(9)) : law;

/** The sizes of a disturbance at a severity, by key. */
function sizes(name: string, factor: number, of = scenario): Record<string, unknown> {
  const it = atSeverity(of, factor).disturbances.find((one) => one.name === name)!;
  const keys = [
    'takesHold',
    'by',
    'spread',
    'bias',
    'to',
    'unsound',
    'asOften',
    'repairsTake',
    'for',
  ] as const;
  return Object.fromEntries(
    keys.flatMap((key) => {
      const size = (it as unknown as Record<string, Law | { law: Law } | undefined>)[key];
      return size === undefined ? [] : [[key, value('law' in size ? size.law : size)]];
    }),
  );
}

describe('atSeverity', () => {
  it('leaves the scenario as it is at 1, and undisturbed at 0, byte for byte', () => {
    expect(atSeverity(scenario, 1)).toBe(scenario);
    const calm = simulate({ ...scenario, disturbances: [] }, 'carry on', 3);
    expect(JSON.stringify(simulate(atSeverity(scenario, 0), 'carry on', 3))).toBe(JSON.stringify(calm));
    expect(JSON.stringify(simulate(scenario, 'carry on', 3))).not.toBe(JSON.stringify(calm));
  });

  it.each([
    ['cold', { by: -12, for: 14400 }],
    ['off', { by: 0.4, spread: 2, for: 3600 }],
    ['knocked', { bias: 0.1, spread: 5, for: 3600 }],
    // Short of 40 %, so of 80 % at twice the severity; of 30 %, so of 60 %.
    ['dim', { to: 0.2, for: 3600 }],
    ['tired', { to: 0.4, for: 3600 }],
    ['slow belt', { to: 0, for: 3600 }],
    ['bad lot', { by: 0.4, unsound: 0.4, for: 3600 }],
    ['ill', { asOften: 5, repairsTake: 3, for: 3600 }],
    ['rush', { to: 3, for: 3600 }],
    // 99 % take, so 39 % less: 78 % less.
    ['faded', { takesHold: 0.21, for: 14400 }],
  ])('doubles the size of "%s"', (name, expected) => {
    expect(sizes(name, 2)).toEqual(expected);
  });

  it.each(['late', 'halt', 'away'])('lets "%s" last twice as long', (name) => {
    expect(sizes(name, 2).for).toBe(2 * (sizes(name, 1).for as number));
  });

  it('cuts what would fall below nothing, and leaves a least of what would stop the line for ever', () => {
    expect(sizes('tired', 4).to).toBe(LEAST);
    expect(sizes('dim', 4).to).toBe(0);
    expect(sizes('faded', 4).takesHold).toBe(0);
    expect(sizes('bad lot', 9).unsound).toBe(1);
  });

  it('cuts the bounds of a distribution', () => {
    const varying = parseScenario(
      changed(
        'station: forming, to: 70 %',
        'station: forming, to: { distribution: uniform, low: 40 %, high: 80 % }',
        EVERY,
      ),
      'cell.yaml',
    );
    expect(sizes('tired', 3, varying).to).toMatchObject({ distribution: 'uniform', low: LEAST });
    expect((sizes('tired', 3, varying).to as { high: number }).high).toBeCloseTo(0.4, 12);
  });

  it('mixes shares of grades with the usual ones, and sums them to 1', () => {
    const graded = parseScenario(
      changed('takes-hold: 60 %, at', 'grades: { C: 50 %, F: 50 % }, at', EVERY).replace(
        'takes-hold: 99 %,',
        'takes-hold: 99 %, grades: { A: 80 %, C: 20 % },',
      ),
      'cell.yaml',
    );
    const grades = (factor: number) => {
      const { disturbances } = atSeverity(graded, factor);
      return (disturbances.find(({ name }) => name === 'faded') as Disturbing<'marks'>).grades!;
    };
    const half = grades(0.5);
    for (const [i, share] of [0.4, 0, 0.35, 0, 0.25].entries()) expect(half[i]).toBeCloseTo(share, 12);
    // At 2: -80 %, 80 %, 100 %; without what is negative 80 : 100.
    const twice = grades(2);
    for (const [i, share] of [0, 0, 0.8 / 1.8, 0, 1 / 1.8].entries()) expect(twice[i]).toBeCloseTo(share, 12);
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('refuses %s', (factor) => {
    expect(() => atSeverity(parseScenario(SOUND, 'cell.yaml'), factor)).toThrow(RangeError);
  });
});
