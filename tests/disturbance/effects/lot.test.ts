import { describe, expect, it } from 'vitest';
import { ran, small } from '../../line/small-line.ts';
import { disturbed, runFor } from '../disturbed-line.ts';

/** A peg every 10 s, joined at once with a plate of a lot of 3; lots come when the one before is used up. */
const joined = (keys = '') => `
stock:
  sheet: { unlimited: true }
  plate:
    { on-hand: 3, reorder-at: 0, order: 3, lead-time: 5 s, ${keys && `${keys}, `}features: { groove: { nominal: 101 mm } } }
parts:
  peg: { features: { rim: { nominal: 100 mm, made-at: forming } } }
stations:
  forming: { does: form, takes: sheet, makes: peg, per-sheet: 1, cycle: 10 s, to: joining }
  joining:
    does: assemble
    buffer: 5
    takes: [plate]
    cycle: 1 s
    fits: [{ hole: plate.groove, shaft: rim, least: 0.5 mm, most: 1.5 mm }]
    misfit: scrap
    to: good
`;
const counted = (body: string, seconds: number) => ran(small(`${seconds} s`, body)).counts;

describe('a bad lot', () => {
  it('is off in all pieces, whenever they are used', () => {
    // Taken at 10, 20, 30 (the last: ordered, there at 35), then lot 1 at 40, 50, 60, lot 2 at 70, 80, 90, there at 65.
    const small = '  small: { disturbs: lot, stock: plate, feature: groove, by: -1 mm, at: 34 s, for: 2 s }';
    expect(counted(disturbed(joined(), small), 95)).toMatchObject({ firstFits: 6, tight: 3, scrapped: 3 });
    // The same, with a size that misses the limits on the other side.
    const large = small.replace('-1 mm', '0.6 mm');
    expect(counted(disturbed(joined(), large), 95)).toMatchObject({ firstFits: 6, loose: 3 });
  });

  it('leaves lots alone that come before or after', () => {
    const none = '  small: { disturbs: lot, stock: plate, feature: groove, by: -1 mm, at: 36 s, for: 20 s }';
    expect(counted(disturbed(joined(), none), 95)).toMatchObject({ firstFits: 9, tight: 0 });
  });

  it('is off by what has built up when it comes', () => {
    // At 35 s, 10 of 20 s of the ramp have passed: -0.5 mm leaves 0.5 mm, which is just enough; -0.52 mm is not.
    const ramp = (by: string) =>
      `  small: { disturbs: lot, stock: plate, feature: groove, by: ${by}, at: 25 s, ramp: 20 s, for: 20 s }`;
    expect(counted(disturbed(joined(), ramp('-0.98 mm')), 65).tight).toBe(0);
    expect(counted(disturbed(joined(), ramp('-1.04 mm')), 65).tight).toBe(3);
  });

  it('is unsound, wholly or by the share asked for, and the inspection finds what it finds', () => {
    const bad = (keys: string, unsound: string) => {
      const hit = `  bad: { disturbs: lot, stock: plate, unsound: ${unsound}, at: 34 s, for: 2 s }`;
      return runFor(2000, disturbed(joined(keys), hit)).stocks.get('plate')!.tally;
    };
    expect(bad('', '100 %')).toMatchObject({ found: 0, discovered: 3 });
    expect(bad('incoming: { finds: 100 % }', '100 %')).toMatchObject({ found: 3, discovered: 0 });
    expect(bad('', '0 %')).toMatchObject({ found: 0, discovered: 0 });
  });

  it('of one supplier leaves those of others alone', () => {
    const from = (supplier: string) =>
      counted(
        disturbed(
          joined('suppliers: { near: { rank: 1 }, far: { rank: 2 } }'),
          `  small: { disturbs: lot, stock: plate, supplier: ${supplier}, feature: groove, by: -1 mm, at: 0 s, for: 1 h }`,
        ),
        95,
      ).tight;
    expect([from('near'), from('far')]).toEqual([6, 0]);
  });
});
