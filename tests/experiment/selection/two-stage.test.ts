import { expect, it } from 'vitest';
import { twoStage } from '../../../src/experiment/selection/two-stage.ts';
import { pairedTotal } from '../../../src/statistics/selection/paired-total.ts';
import { SETTINGS, valuesAbout } from './made-up.ts';

const settings = { ...SETTINGS, procedure: 'two-stage' } as const;
const values = valuesAbout([20, 23, 22], 400);
const total = pairedTotal(
  values.map((own) => own.slice(0, settings.firstStage)),
  settings.confidence,
  settings.worth,
);
const first = (runs: number) => values.map((own) => own.slice(0, runs));

it('runs as many as the spread of the first stage tells, and then takes the best mean', () => {
  expect(total).toBeGreaterThan(settings.firstStage);
  expect(twoStage(first(3), settings)).toMatchObject({ how: null, needed: null, runs: 3 });
  expect(twoStage(first(total - 1), settings)).toMatchObject({ how: null, needed: total, best: null });
  const found = twoStage(values, settings);
  expect(found).toMatchObject({ how: 'best mean', best: 1, runs: total, left: [0, 1, 2], out: [] });
  expect(twoStage(values, { ...settings, better: 'lower' }).best).toBe(0);
});

it('ends undecided where that is more than the most runs', () => {
  const found = twoStage(values, { ...settings, most: total - 1 });
  expect(found).toMatchObject({ how: 'most runs', runs: total - 1, needed: total, best: 1 });
});

it('takes the first of those that are the same in every run', () => {
  expect(twoStage([values[0]!, values[0]!], settings)).toMatchObject({
    ...{ how: 'best mean', best: 0, runs: settings.firstStage },
  });
});
