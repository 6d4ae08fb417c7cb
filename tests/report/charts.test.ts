import * as Plot from '@observablehq/plot';
import { expect, it } from 'vitest';
import { drawn, WIDTH } from '../../src/report/charts.ts';

/** px: no digit of the letters that pages are set in is wider, at 12 px. */
const DIGIT = 7.7;

const picture = (ends: readonly [number, number]) =>
  drawn(
    {
      ...{ width: WIDTH, marginLeft: 12, marginRight: 12 },
      x: { domain: ends, ticks: ends, tickFormat: 'd' },
      marks: [Plot.ruleX(ends)],
    },
    'interval',
    'A scale',
  );

it.each([
  [0, 9],
  [-123_456_789, 123_456_789],
  [0, 1_234_567],
] as const)('holds the numbers of a scale from %d to %d', (...ends) => {
  const [, scale] = /aria-label="x-axis tick label"(.*?)<\/g>/s.exec(picture(ends))!;
  const ticks = [...scale!.matchAll(/translate\(([\d.]+),.*?>([^<]+)<\/text>/g)];
  expect(ticks.length).toBe(2);
  for (const [, x, text] of ticks) {
    const half = (text!.length * DIGIT) / 2;
    expect(Number(x) - half, text).toBeGreaterThanOrEqual(-0.5);
    expect(Number(x) + half, text).toBeLessThanOrEqual(WIDTH + 0.5);
  }
});
