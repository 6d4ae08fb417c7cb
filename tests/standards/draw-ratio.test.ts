import { describe, expect, it } from 'vitest';
import {
  boxDrawRatio,
  cupDrawRatio,
  HEMISPHERE_DRAW_RATIO,
  meanWall,
} from '../../src/standards/draw-ratio.ts';

describe('the areal draw ratio', () => {
  // T01: draw-ratio page of a heavy-gauge thermoformer's design guide (thermoform.com): a box of 10 x 12 x 2 in has an
  // area of 208 on a footprint of 120, printed as 1.7; a wall of 0.100 in needs a sheet of 0.170 (0.17333 unrounded).
  it('of the printed open box is 208/120, and its wall asks for a sheet of 0.17333 in', () => {
    const ratio = boxDrawRatio(12, 10, 2);
    expect(ratio).toBeCloseTo(1.73333, 5);
    expect(Math.floor(ratio * 10) / 10).toBe(1.7);
    expect(meanWall(0.173333, ratio)).toBeCloseTo(0.1, 6);
  });

  // T02: the same page's second box, 10 x 11 x 5 in, whose printed area of 300 is wrong: 2x50 + 2x55 + 110 = 320.
  it('of the second box is 320/110', () => {
    const ratio = boxDrawRatio(11, 10, 5);
    expect(ratio).toBeCloseTo(2.90909, 5);
    expect(meanWall(0.290909, ratio)).toBeCloseTo(0.1, 6);
  });

  // T04: geometry: half a sphere, and a straight cup of height H and diameter D, 1 + 4 H/D.
  it('of half a sphere is 2, of a cup 3 at H/D = 0.5 and 5 at 1', () => {
    // 2 pi r^2 over pi r^2.
    expect(HEMISPHERE_DRAW_RATIO).toBe(2);
    expect(cupDrawRatio(80, 40)).toBeCloseTo(3, 12);
    expect(cupDrawRatio(80, 80)).toBeCloseTo(5, 12);
  });

  // T03: Ditai thermoforming wall-thickness guide; Throne (1996), Technology of Thermoforming.
  it('thins a sheet of 4 mm to a mean wall of 2 mm at a ratio of 2', () => {
    expect(meanWall(4, HEMISPHERE_DRAW_RATIO)).toBe(2);
  });
});
