import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  continuation,
  KimNelson,
  type KimNelsonSettings,
  kimNelsonConstants,
  lastStage,
} from '../../../src/statistics/selection/kim-nelson.ts';
import { normals } from '../normals.ts';
import { chanceError, expectPrinted } from '../printed.ts';

describe('the constants of KN', () => {
  // O08: Kim and Nelson (2001), c = 1.
  it.each([
    [2, 0.33405, 6.0129],
    [5, 0.634967, 11.4294],
    [10, 0.859083, 15.4635],
  ])('for %d systems and 10 runs first at 95 %% are %d and %d', (systems, eta, square) => {
    const found = kimNelsonConstants(systems, 10, 0.95);
    expectPrinted(found.eta, eta);
    expectPrinted(found.square, square);
  });

  // O09.
  it('give how far behind a system may lie, and the last stage', () => {
    const { eta, square } = kimNelsonConstants(5, 20, 0.95);
    expectPrinted(eta, 0.237238);
    expectPrinted(square, 9.01506);
    for (const [runs, reach] of [
      [20, 0.401506],
      [30, 0.101004],
      [60, 0],
    ] as const)
      expectPrinted(continuation(square, 4, 1, runs), reach);
    expect(lastStage(square, 4, 1)).toBe(36);
  });
});

const SETTINGS: KimNelsonSettings = {
  systems: 4,
  better: 'higher',
  worth: 1,
  confidence: 0.9,
  firstStage: 10,
  most: 100_000,
};

/** Feeds it until it ends. */
function runOut(selection: KimNelson, run: () => number[]): KimNelson {
  while (!selection.selected) selection.add(run());
  return selection;
}

describe('selection run by run', () => {
  it.each([
    ['independent of each other', 0, 'higher'],
    ['under common luck', 3, 'higher'],
    ['under common luck, lower being better', 3, 'lower'],
  ] as const)('chooses right at least as often as stated, systems %s', (_how, common, better) => {
    const draw = normals(71);
    const tries = 600;
    const sign = better === 'higher' ? 1 : -1;
    let right = 0;
    for (let i = 0; i < tries; i++) {
      // The least favourable case: the best leads all others by just what is worth finding.
      const selection = runOut(new KimNelson({ ...SETTINGS, better }), () => {
        const shared = common * draw();
        return [0, 0, 1, 0].map((lead, system) => sign * lead + shared + (1 + system / 2) * draw());
      });
      if (selection.selected!.best === 2) right++;
      expect(selection.selected!.confidence).toBe(0.9);
    }
    expect(right / tries).toBeGreaterThan(0.9 - chanceError(0.9, tries));
  });

  // For two systems and c = 1 the bound behind the procedure is sharp for a Brownian motion (V. Fabian 1974, from memory), so
  // that what it chooses right above what is stated comes of whole runs alone.
  it('chooses right not much more often than stated among two', () => {
    const draw = normals(73);
    const tries = 800;
    let right = 0;
    for (let i = 0; i < tries; i++) {
      const selection = runOut(new KimNelson({ ...SETTINGS, systems: 2 }), () => {
        const shared = 10 * draw();
        return [1 + shared + 6 * draw(), shared + 6 * draw()];
      });
      if (selection.selected!.best === 0) right++;
    }
    expect(right / tries).toBeGreaterThan(0.9 - chanceError(0.9, tries));
    expect(right / tries).toBeLessThan(0.92 + chanceError(0.92, tries));
  });

  it('leaves out who lies far behind after the first stage, and asks no more of it', () => {
    const draw = normals(72);
    const selection = new KimNelson({ ...SETTINGS, systems: 3 });
    for (let i = 0; i < 9; i++) selection.add([draw(), draw() + 0.1, draw() - 100]);
    expect(selection).toMatchObject({ survivors: [0, 1, 2], runs: 9, selected: null, mostNeeded: null });
    selection.add([draw(), draw() + 0.1, draw() - 100]);
    expect(selection.survivors).not.toContain(2);
    if (!selection.selected) expect(() => selection.add([draw(), draw(), null])).not.toThrow();
  });

  // With two systems, ten runs first and a sample variance of their differences of 10, h^2 = 6.0129 (O08) allows 60 stages.
  it('ends at the last stage at the latest, with the one ahead', () => {
    const selection = new KimNelson({ ...SETTINGS, systems: 2, confidence: 0.95 });
    for (let i = 0; i < 10; i++) selection.add([i % 2 === 0 ? 3 : -3, 0]);
    expect(selection.mostNeeded).toBe(61);
    while (!selection.selected) selection.add([0.001, 0]);
    expect(selection.selected).toEqual({
      how: 'one left',
      best: 0,
      confidence: 0.95,
    });
    expect(selection.runs).toBeGreaterThan(50);
    expect(selection.runs).toBeLessThanOrEqual(61);
  });

  it('ends at the most runs allowed without stating a probability', () => {
    const selection = new KimNelson({ ...SETTINGS, systems: 2, most: 12 });
    let i = 0;
    runOut(selection, () => [i++ % 2 === 0 ? 30 : -29, 0]);
    expect(selection).toMatchObject({
      runs: 12,
      survivors: [0, 1],
      selected: { how: 'most runs reached', best: 0, confidence: null },
    });
    expect(() => selection.add([1, 2])).toThrow(RangeError);
  });

  it('ends after the first stage where nothing varies, or some do the very same', () => {
    const still = runOut(new KimNelson(SETTINGS), () => [1, 1, 1, 1.5]);
    expect(still).toMatchObject({
      runs: 10,
      survivors: [3],
      selected: { how: 'one left', best: 3, confidence: 0.9 },
    });
    const draw = normals(74);
    const tied = runOut(new KimNelson(SETTINGS), () => {
      const same = 50 + draw();
      return [draw(), same, same, draw()];
    });
    expect(tied).toMatchObject({
      runs: 10,
      survivors: [1, 2],
      selected: { how: 'tied at the last stage', best: 1, confidence: 0.9 },
    });
  });

  it('always ends, keeps who it chose among those left, and never takes anyone back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1000 }),
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 2, max: 12 }),
        (seed, systems, firstStage) => {
          const draw = normals(seed);
          const selection = new KimNelson({ ...SETTINGS, systems, firstStage, most: 300 });
          let before = selection.survivors;
          while (!selection.selected) {
            selection.add(Array.from({ length: systems }, (_, i) => i / 4 + draw()));
            for (const i of selection.survivors) expect(before).toContain(i);
            before = selection.survivors;
          }
          expect(before).toContain(selection.selected.best);
          expect(selection.runs).toBeLessThanOrEqual(300);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('refuses what it cannot go by', () => {
    expect(() => new KimNelson({ ...SETTINGS, worth: 0 })).toThrow(RangeError);
    expect(() => new KimNelson({ ...SETTINGS, most: 5 })).toThrow(RangeError);
    expect(() => new KimNelson({ ...SETTINGS, systems: 1 })).toThrow(RangeError);
    const selection = new KimNelson(SETTINGS);
    expect(() => selection.add([1, 2, null, 3])).toThrow('system 2');
    expect(() => selection.add([1, 2, 3])).toThrow('system 3');
    expect(selection.runs).toBe(0);
  });
});
