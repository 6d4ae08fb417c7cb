import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/experiment/simulate.ts';
import { Calendar } from '../../../src/kernel/calendar.ts';
import { PartTable } from '../../../src/line/part-table.ts';
import { Reader } from '../../../src/line/reader.ts';
import { Tally } from '../../../src/line/tally.ts';
import { Course, Upset, Upsets } from '../../../src/line/upset.ts';
import { gaugedCell, small } from '../../line/small-line.ts';
import { disturbed } from '../disturbed-line.ts';

const cell = (reads: string) => gaugedCell({ more: `reader: { reads: ${reads}, unread: pass }` });
const unread = (body: string, seconds: number) =>
  simulate(small(`${seconds} s`, body), 'carry on', 1).counts.unread;

describe('a disturbed reader', () => {
  it('reads nothing at 0 %, and as ever when it is over', () => {
    // Read as they are loaded at the gauge, at 10, 20, ..., 90: those of 30, 40 and 50 are not.
    const blind = '  blind: { disturbs: reader, station: gauging, to: 0 %, at: 25 s, for: 30 s }';
    expect(unread(disturbed(cell('100 %'), blind), 95)).toBe(3);
  });

  it('misses what it misses anyway, and more the worse it is: the luck of a part is its own', () => {
    const at = (to: string) =>
      unread(
        disturbed(
          cell('80 %'),
          `  dim: { disturbs: reader, station: gauging, to: ${to}, at: 0 s, for: 1 d }`,
        ),
        20000,
      );
    const calm = unread(cell('80 %'), 20000);
    expect(at('100 %')).toBe(calm);
    const [half, quarter] = [at('50 %'), at('25 %')];
    expect(half).toBeGreaterThan(calm);
    expect(quarter).toBeGreaterThan(half);
  });

  it('reads so many of 100 at one attempt, and more within several', () => {
    const parts = new PartTable();
    const [luck, marked] = [parts.column(0), parts.column(1)];
    const reader = new Reader(
      {
        chances: [0.8, 0.8, 0.8, 0.8, 0],
        tries: 2,
        retry: 1,
        unread: { byHand: null, reMark: null, scraps: false },
      },
      {
        ...{ parts, tally: new Tally(), luck, again: () => 0, marked, grade: null, reMark: null },
      },
    );
    const row = parts.start(0);
    reader.upsets = new Upsets(new Calendar());
    const upset = new Upset(new Course());
    upset.size = -0.5;
    reader.upsets.add(upset);
    // 0.4 an attempt, so 1 - 0.6^2 = 0.64 within two.
    const reads = (drawn: number) => {
      parts.set(row, luck, drawn);
      expect(reader.canRead(row)).toBe(drawn < 0.64);
      return [reader.read(row), reader.seconds];
    };
    expect([0.39, 0.41, 0.63, 0.65].map(reads)).toEqual([
      [true, 0],
      [true, 1],
      [true, 1],
      [false, 1],
    ]);
  });
});
