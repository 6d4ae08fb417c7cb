import { describe, expect, it } from 'vitest';
import { type Sized, sized } from '../../../src/experiment/sizing/sized.ts';
import { allPoints, neighbours } from '../../../src/statistics/search/lattice.ts';
import { outcome } from '../../report/fake.ts';
import { chanceError } from '../../statistics/printed.ts';
import { luck, meanAt, question, settings, size, throughput } from './made-up.ts';

const numbers = (values: readonly (number | string)[]) => values.map(Number);
const costOf = (point: readonly number[]) =>
  point.reduce((sum, x, d) => sum + (x + 1) * question.sizes[d]!.cost, 0);

/** Whether what is said of the choice is right for the line that the runs are of. */
function isRight({ chosen, configurations, targets: [target] }: Sized): boolean {
  if (!chosen || meanAt(numbers(chosen.values)) < target!.value) return false;
  return configurations
    .filter(({ cost, word }) => cost < chosen.cost && word === 'misses')
    .every(({ values }) => meanAt(numbers(values)) < target!.value + target!.worth);
}

describe('a sizing', () => {
  it.each([
    ['by a search', false, 60],
    ['of all choices', true, 15],
  ])('%s says what is right at least as often as stated', async (_how, whole, times) => {
    let right = 0;
    for (let experiment = 0; experiment < times; experiment++) {
      const found = await sized(question, { ...settings, whole }, luck(experiment));
      expect(found.spent).toBeNull();
      // Nothing that is cheaper is left open.
      const open = found.configurations.filter(
        ({ cost, word }) => cost < found.chosen!.cost && word !== 'misses',
      );
      expect(open).toEqual([]);
      expect(found.neighboursChecked).toBe(true);
      if (isRight(found)) right++;
    }
    expect(right / times).toBeGreaterThanOrEqual(0.95 - 3 * chanceError(0.95, times));
  });

  it('by a search costs nearly what looking at all costs', async () => {
    // The least cost of any that meets the target, and of any that meets it by what is worth having.
    const least = (limit: number) =>
      Math.min(
        ...allPoints([8, 8, 3])
          .filter((point) => meanAt(point.map((x) => x + 1)) >= limit)
          .map(costOf),
      );
    const costs: number[] = [];
    for (let experiment = 0; experiment < 20; experiment++)
      costs.push((await sized(question, settings, luck(experiment))).chosen!.cost);
    expect(Math.min(...costs)).toBeGreaterThanOrEqual(least(80));
    expect(costs.filter((cost) => cost <= least(82)).length).toBeGreaterThanOrEqual(18);
  });

  it('has every cheaper neighbour of the choice among those it checked', async () => {
    const found = await sized(question, settings, luck(1));
    const { chosen, configurations } = found;
    const cheaper = neighbours(chosen!.point, [8, 8, 3]).filter((point) => costOf(point) < chosen!.cost);
    const words = cheaper.map(
      (point) => configurations.find((one) => String(one.point) === String(point))?.word,
    );
    expect(words).toEqual(cheaper.map(() => 'misses'));
    expect(found.possible).toBe(192);
    expect(configurations.length).toBeLessThan(120);
  });

  it('tells what a step does, in fresh runs, and that is right', async () => {
    const { look, chosen } = await sized(question, settings, luck(2));
    expect(look).toMatchObject({ runs: 30, fresh: true });
    const at = numbers(chosen!.values);
    for (const { size, up, cost, changes } of look!.steps) {
      const other = at.map((value, i) => (i === size ? value + (up ? 1 : -1) : value));
      const truth = meanAt(other) - meanAt(at);
      expect(cost).toBe((up ? 1 : -1) * question.sizes[size]!.cost);
      expect(changes[0]!.lower).toBeLessThanOrEqual(truth);
      expect(changes[0]!.upper).toBeGreaterThanOrEqual(truth);
    }
  });

  it('says so where the smallest meets the target, and where nothing does', async () => {
    const easy = { ...question, targets: [throughput(40, 2)] };
    const smallest = await sized(easy, settings, luck(3));
    expect(smallest.chosen!.values).toEqual([1, 1, 1]);
    const hard = { ...question, targets: [throughput(200, 2)] };
    const none = await sized(hard, settings, luck(3));
    expect(none.chosen).toBeNull();
    expect(meanAt(numbers(none.apparent!.values))).toBeGreaterThan(meanAt([8, 8, 3]) - 3);
    expect(none.configurations.every(({ word }) => word === 'misses')).toBe(true);
  });

  it('ends when its runs are done, with what is known, and goes the same way again', async () => {
    const whole = await sized(question, settings, luck(4));
    for (const atMost of [5, 200, whole.runs - 1, whole.runs]) {
      const cut = await sized(question, { ...settings, atMost }, luck(4));
      expect(cut.runs).toBe(Math.min(atMost, whole.runs));
      expect(cut.spent).toBe(atMost < whole.runs ? 'runs' : null);
      if (atMost === whole.runs) expect(cut).toEqual(whole);
    }
  });

  it('that time ends is the same as one that ends after as many runs', async () => {
    let left = 40;
    const timed = await sized(question, { ...settings, inTime: () => left-- > 0 }, luck(5));
    const counted = await sized(question, { ...settings, atMost: timed.runs }, luck(5));
    expect([timed.spent, counted.spent]).toEqual(['time', 'runs']);
    expect({ ...timed, spent: null }).toEqual({ ...counted, spent: null });
  });

  it('says nothing of sizes with a run that gives no value', async () => {
    const all = luck(6);
    const found = await sized(
      { ...question, sizes: [size('a', 3, 1)], targets: [throughput(20, 2)] },
      { ...settings, whole: true },
      async (
        tasks, // biome-ignore format: one line reads better
      ) =>
        (await all(tasks)).map((one, i) =>
          tasks[i]!.variant!.changes![0]!.is === 1 ? outcome('carry on', 1) : one,
        ),
    );
    expect(found.configurations.map(({ word }) => word)).toEqual(['no value', 'meets', 'not checked']);
    expect(found.configurations[0]!.means).toEqual([null]);
  });

  it('looks closer by the first runs where a fresh one gives no value', async () => {
    const all = luck(7);
    const last = (await sized(question, settings, luck(7))).runs;
    let count = 0;
    const found = await sized(question, settings, async (tasks) =>
      (await all(tasks)).map((one) => (++count > last - 20 ? outcome('carry on', one.seed) : one)),
    );
    expect(found.chosen).not.toBeNull();
    expect(found.look).toMatchObject({ fresh: false, runs: 10 });
    expect(found.look!.means[0]!.value).toBeGreaterThan(70);
  });
});
