import { expect, it } from 'vitest';
import { ReadingSums } from '../../src/statistics/reading-sums.ts';
import { ReadingWindow } from '../../src/statistics/reading-window.ts';
import { normals } from './normals.ts';

it('holds what the last so many readings give when they are summed up by themselves', () => {
  const next = normals(5);
  const window = new ReadingWindow(7);
  const all: number[] = [];
  for (let k = 1; k <= 60; k++) {
    if (k === 40) {
      window.empty();
      all.length = 0;
    }
    const value = next();
    window.add(value);
    all.push(value);
    const sums = new ReadingSums();
    for (const one of all.slice(-7)) sums.add(one);
    const expected = sums.moments(100);
    const found = window.moments(100);
    expect(found.readings).toBe(expected.readings);
    expect(window.full).toBe(all.length >= 7);
    expect(found.mean).toBeCloseTo(expected.mean!, 12);
    if (all.length < 2) continue;
    expect(found.sdOverall).toBeCloseTo(expected.sdOverall!, 12);
    expect(found.sdWithin).toBeCloseTo(expected.sdWithin!, 12);
  }
});
