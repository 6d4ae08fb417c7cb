import { describe, expect, it } from 'vitest';
import { uniformBlocks } from '../../src/kernel/distributions/uniform.ts';
import { Streams } from '../../src/kernel/streams.ts';
import { BORN, PartTable } from '../../src/line/part-table.ts';

describe('the table of parts', () => {
  it('gives part number k draw number k of every luck, and fresh defaults, whichever row it gets', () => {
    const streams = new Streams(5);
    const parts = new PartTable();
    const mark = parts.column(7);
    const first = parts.luck(uniformBlocks(streams.of('first')));
    const reading = parts.column(Number.NaN);
    const second = parts.luck(uniformBlocks(streams.of('second')));
    const [expectedFirst, expectedSecond] = [streams.of('first'), streams.of('second')];
    const pick = streams.of('pick');
    const here: number[] = [];
    for (let k = 0; k < 3000; k++) {
      const row = parts.start(k);
      expect(here).not.toContain(row);
      expect([BORN, mark, first, reading, second].map((column) => parts.get(row, column))).toEqual([
        ...[k, 7, expectedFirst()],
        ...[Number.NaN, expectedSecond()],
      ]);
      for (let column = 1; column < parts.width; column++) parts.set(row, column, -99);
      here.push(row);
      while (here.length > 0 && pick() < 0.495)
        parts.leave(here.splice(Math.floor(pick() * here.length), 1)[0]!);
    }
    // So that rows were used again, and the table and its list of free rows had to grow.
    expect(parts.data.length / parts.width).toBeLessThan(3000);
    expect([...parts.rowsInLine()].sort((a, b) => a - b)).toEqual([...here].sort((a, b) => a - b));
  });

  it('remembers more free rows than it had room for at first', () => {
    const parts = new PartTable();
    const rows = Array.from({ length: 500 }, (_, k) => parts.start(k));
    for (const row of rows) parts.leave(row);
    expect([...parts.rowsInLine()]).toEqual([]);
    const again = Array.from({ length: 500 }, (_, k) => parts.start(k));
    expect(again.sort((a, b) => a - b)).toEqual(rows.sort((a, b) => a - b));
  });

  it('mixes luck without disturbing the streams, each by those before it in the list', () => {
    const streams = new Streams(6);
    const parts = new PartTable();
    const columns = ['a', 'b', 'c'].map((name) => parts.luck(uniformBlocks(streams.of(name))));
    // Not in the order of the columns.
    const [first, second, third] = [columns[2]!, columns[0]!, columns[1]!];
    parts.mix(
      [first, second, third],
      [
        [2, 0, 0],
        [1, 3, 0],
        [0, 0.5, 1],
      ],
    );
    const [a, b, c] = [streams.of('a'), streams.of('b'), streams.of('c')];
    for (let k = 0; k < 600; k++) {
      const [drawnA, drawnB, drawnC] = [a(), b(), c()];
      const row = parts.start(k);
      expect(parts.get(row, first)).toBeCloseTo(2 * drawnC, 12);
      expect(parts.get(row, second)).toBeCloseTo(drawnC + 3 * drawnA, 12);
      expect(parts.get(row, third)).toBeCloseTo(0.5 * drawnA + drawnB, 12);
      if (k % 2 === 0) parts.leave(row);
    }
  });

  it('takes no further column once a part was started', () => {
    const parts = new PartTable();
    parts.start(0);
    expect(() => parts.column(0)).toThrow('before the first part');
  });
});
