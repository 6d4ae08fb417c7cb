import { expect, it } from 'vitest';
import { cornersOf } from '../../src/exercise/check.ts';
import type { Exercise, Knob, Setting } from '../../src/exercise/exercise.ts';
import { expectedAt, refusalOf, scenarioAt, settingText, startOf } from '../../src/exercise/setting.ts';
import { theoryNamed } from '../../src/exercise/theories/index.ts';
import { estimateOf, trial, watchedOf } from '../../src/exercise/trial.ts';
import { studentQuantile } from '../../src/statistics/mean-interval.ts';
import { SHIPPED } from './shipped.ts';

it('ships at least five, each with a theory, its source and what it teaches', () => {
  expect(SHIPPED.length).toBeGreaterThanOrEqual(5);
  for (const [, exercise] of SHIPPED) {
    expect(theoryNamed(exercise.theory ?? '')).toBeDefined();
    expect(Math.min(exercise.source.length, exercise.teaches.length)).toBeGreaterThan(80);
  }
});

/** A value between the ends of a knob. */
const between = (knob: Knob): number | string =>
  knob.kind === 'number'
    ? knob.least + knob.step * Math.round((knob.most - knob.least) / knob.step / 3)
    : knob.choices[0]!.name;

/** The start, all that one knob reaches by itself, and what lies between with every other choice. */
function settingsOf(exercise: Exercise): Setting[] {
  const middle = Object.fromEntries(exercise.knobs.map((knob) => [knob.name, between(knob)]));
  const mixed = exercise.knobs.flatMap((knob) =>
    knob.kind === 'number' ? [] : knob.choices.map(({ name }) => ({ ...middle, [knob.name]: name })),
  );
  const corners = [...cornersOf(exercise)].map(({ setting }) => setting);
  const all = [startOf(exercise), ...corners, middle, ...mixed];
  return [...new Map(all.map((setting) => [JSON.stringify(setting), setting])).values()];
}

/** One check in so many misses where theory holds and means of runs are normal; there are about a hundred. */
const CHANCE = 1e-4;

it.each(SHIPPED)('%s: runs at every knob, ends and between, as theory expects', (_, exercise) => {
  let compared = 0;
  for (const setting of settingsOf(exercise)) {
    for (const knob of exercise.knobs) expect(refusalOf(knob, setting[knob.name])).toBeNull();
    const runs = [...trial(exercise, setting)];
    expect(runs).toHaveLength(exercise.seeds);
    const expected = expectedAt(exercise, setting);
    const watched = watchedOf(scenarioAt(exercise, setting), exercise.watch);
    for (const [i, measure] of watched.entries()) {
      const theory = expected?.[measure.name];
      if (theory === undefined) continue;
      const found = runs.map((values) => values[i]!);
      const estimate = estimateOf(runs, i, measure)!;
      const mean = found.reduce((sum, value) => sum + value, 0) / found.length;
      const variance = found.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (found.length - 1);
      const half = studentQuantile(1 - CHANCE / 2, found.length - 1) * Math.sqrt(variance / found.length);
      const told = `${settingText(exercise, setting)}: ${measure.name} ${estimate.value}, theory ${theory}`;
      expect(Math.abs(estimate.value - theory), told).toBeLessThanOrEqual(half + 1e-9);
      compared++;
    }
  }
  expect(compared).toBeGreaterThan(5);
});

it.each(SHIPPED)('%s: what it says is right holds by theory', (name, exercise) => {
  const at = (setting: Setting) => expectedAt(exercise, { ...startOf(exercise), ...setting })!;
  const right = exercise.predictions.flatMap((one) => (one.kind === 'choice' ? [one.right] : []));
  switch (name) {
    case 'buffer.yaml': {
      const [one, four, seven] = [1, 4, 7].map((places) => at({ 'places between': places }).throughput!);
      expect(right).toEqual(['less than that']);
      expect(seven! - four!).toBeLessThan(four! - one!);
      return;
    }
    case 'variability.yaml': {
      const wait = (cv: number, mean: number) =>
        at({ 'variation of the time': cv, 'mean time at the press': mean })['lead time']! - mean;
      expect(right).toEqual(['about doubles or more', 'half of it']);
      expect(wait(100, 54) / wait(100, 48)).toBeGreaterThan(1.9);
      expect(wait(0, 48) / wait(100, 48)).toBeCloseTo(0.5, 10);
      return;
    }
    case 'stops.yaml': {
      const [short, long] = ['many short', 'few long'].map((stops) => at({ stops }));
      expect(right).toEqual(['neither', 'with few long stops']);
      expect(short!.throughput).toBe(long!.throughput);
      expect(long!['lead time']).toBeGreaterThan(short!['lead time']!);
      return;
    }
    case 'shortage.yaml': {
      const filled = (size: number) => at({ 'frames in an order': size })['frame filled at once']!;
      expect(right).toEqual(['rises']);
      expect(filled(24)).toBeGreaterThan(filled(12));
      return;
    }
    case 'drift.yaml': {
      const scrap = (what: string) => at({ 'what you do': what })['scrap rate']!;
      expect(right).toEqual(['about as much', 'much less']);
      expect(scrap('gauge every tray') / scrap('carry on')).toBeGreaterThan(0.98);
      expect(scrap('gauge every tray')).toBeLessThan(scrap('carry on'));
      expect(scrap('retune') / scrap('carry on')).toBeLessThan(0.1);
      return;
    }
    default:
      expect(right).toEqual([]);
  }
});
