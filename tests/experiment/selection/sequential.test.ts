import { describe, expect, it } from 'vitest';
import { sequential } from '../../../src/experiment/selection/sequential.ts';
import { continuation, KimNelson, kimNelsonConstants } from '../../../src/statistics/selection/kim-nelson.ts';
import { SETTINGS, valuesAbout } from './made-up.ts';

const MEANS = [20, 23, 22, 15];

/** The procedure of the statistics fed by hand, and who was left after each run. */
function byHand(values: readonly (readonly number[])[], settings = SETTINGS) {
  const selection = new KimNelson({ systems: values.length, ...settings });
  const left: (readonly number[])[] = [];
  for (let run = 0; !selection.selected; run++) {
    selection.add(values.map((own) => own[run]!));
    left.push(selection.survivors);
  }
  return { selection, left };
}

describe('the fully sequential choice', () => {
  it.each(['higher', 'lower'] as const)(
    'of the %s chooses and leaves out as the procedure fed by hand',
    (better) => {
      const settings = { ...SETTINGS, better };
      const values = valuesAbout(MEANS, 400);
      const { selection, left } = byHand(values, settings);
      const found = sequential(values, settings);
      expect(found).toMatchObject({ how: 'one left', best: selection.selected!.best, runs: selection.runs });
      expect(found.best).toBe(better === 'higher' ? 1 : 3);
      expect(found.left).toEqual(selection.survivors);
      expect(found.out.map(({ policy }) => policy).sort()).toEqual(
        [0, 1, 2, 3].filter((i) => i !== found.best),
      );
      for (const { policy, runs } of found.out) {
        expect(left[runs - 1]).not.toContain(policy);
        if (runs > settings.firstStage) expect(left[runs - 2]).toContain(policy);
      }
    },
  );

  it('says by how much a policy was outdone, and how far behind it might have been', () => {
    const values = valuesAbout(MEANS, 400);
    const { square } = kimNelsonConstants(4, SETTINGS.firstStage, SETTINGS.confidence);
    for (const { policy, by, runs, behind, allowed } of sequential(values, SETTINGS).out) {
      const differences = values[by]!.slice(0, runs).map((value, run) => value - values[policy]![run]!);
      const meanOf = (of: readonly number[]) => of.reduce((sum, value) => sum + value, 0) / of.length;
      const first = differences.slice(0, SETTINGS.firstStage);
      const variance =
        first.reduce((sum, value) => sum + (value - meanOf(first)) ** 2, 0) / (first.length - 1);
      expect(behind).toBeCloseTo(meanOf(differences), 9);
      expect(allowed).toBeCloseTo(continuation(square, variance, SETTINGS.worth, runs), 9);
      expect(behind).toBeGreaterThan(allowed);
    }
  });

  it('is open while runs are missing, and tells then after how many it ends at the latest', () => {
    const values = valuesAbout([20, 20.2, 20.1], 400);
    expect(sequential(valuesAbout(MEANS, 3), SETTINGS)).toMatchObject({
      how: null,
      best: null,
      needed: null,
      runs: 3,
    });
    const open = sequential(
      values.map((own) => own.slice(0, 6)),
      SETTINGS,
    );
    expect(open).toMatchObject({ how: null, runs: 6 });
    const whole = sequential(values, { ...SETTINGS, most: 10_000 });
    expect(whole.how).not.toBeNull();
    expect(whole.runs).toBeLessThanOrEqual(open.needed!);
  });

  it('ends undecided with the most runs', () => {
    const values = valuesAbout([20, 20.2, 20.1], 400);
    const found = sequential(values, { ...SETTINGS, worth: 0.1, most: 30 });
    expect(found).toMatchObject({ how: 'most runs', runs: 30 });
    const sums = found.left.map((i) => values[i]!.slice(0, 30).reduce((sum, value) => sum + value, 0));
    expect(found.best).toBe(found.left[sums.indexOf(Math.max(...sums))]);
    expect(found.needed).toBeGreaterThan(30);
  });

  it('takes the first of those that are the same in every run', () => {
    const [one] = valuesAbout([20], 20);
    const found = sequential([one!, one!, one!.map((value) => value - 1)], SETTINGS);
    expect(found).toMatchObject({ how: 'level', best: 0, left: [0, 1], runs: SETTINGS.firstStage });
    expect(found.out).toEqual([{ policy: 2, runs: 5, by: 0, behind: expect.closeTo(1, 9), allowed: 0 }]);
  });
});
