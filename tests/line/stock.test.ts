import { describe, expect, it } from 'vitest';
import { Calendar } from '../../src/kernel/calendar.ts';
import { Streams } from '../../src/kernel/streams.ts';
import { Stock } from '../../src/line/stock.ts';
import { ran, small } from './small-line.ts';

const body = `
stock:
  blank: { on-hand: 3, reorder-at: 1, order: 2, lead-time: 25 s }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }`;

describe('stock', () => {
  it('is ordered when it falls to the reorder point and comes after the lead time', () => {
    // Pieces are taken at 0, 10 (one left: two ordered for 35), 20, 35 (ordered for 60), 45, 60 (for 85), 70, 85.
    // Nothing is on hand 20-35, 45-60 and 70-85; the station starves 30-35, 55-60 and 80-85.
    const { counts, stateShares, stockOutShares } = ran(small('85 s', body));
    expect(counts).toMatchObject({ started: 8, good: 7 });
    expect(stockOutShares.blank).toBeCloseTo(45 / 85, 12);
    expect(stateShares.only!.starved).toBeCloseTo(15 / 85, 12);
  });

  it('is ordered more than once when one order does not lift it above the reorder point', () => {
    // Nothing on hand and a reorder point of 4: three orders of 2 are placed at once and come at 25 s.
    const { counts, stockOutShares } = ran(
      small('85 s', body.replace('3, reorder-at: 1', '0, reorder-at: 4')),
    );
    // Six pieces at 25 s: taken at 25, ..., 85 with more on the way; cycles end at 35, 45, 55, 65, 75, 85.
    expect(counts).toMatchObject({ started: 7, good: 6 });
    expect(stockOutShares.blank).toBeCloseTo(25 / 85, 12);
  });

  it('that runs out for good leaves the line starved', () => {
    const { counts, stateShares } = ran(
      small(
        '100 s',
        'stock: { blank: { on-hand: 3 } }\nstations:\n  only: { does: work, takes: blank, cycle: 10 s, to: good }',
      ),
    );
    expect(counts).toMatchObject({ started: 3, good: 3 });
    expect(stateShares.only!.starved).toBeCloseTo(0.7, 12);
  });

  it('is used up lot by lot in the order of delivery, each lot with one term of its own', () => {
    const calendar = new Calendar();
    const leadTime = { distribution: 'constant', value: 5 } as const;
    const stock = new Stock(
      { name: 'sheet', onHand: 2, reorderAt: 1, order: 3, leadTime },
      calendar,
      new Streams(1),
    );
    const width = stock.variation('width', 1, 0);
    const again = stock.variation('width', 1, 0);
    const want = stock.want({ keepsOut: false, wake: () => {} });
    stock.open();
    const lots: number[] = [];
    for (let k = 0; k < 9; k++) {
      while (stock.onHand === 0) calendar.run(calendar.now + 1);
      lots.push(stock.take(want));
    }
    // Two pieces of the opening lot 0, then threes; lot k has the k-th draw whatever is asked first.
    expect(lots).toEqual([0, 0, 1, 1, 1, 2, 2, 2, 3]);
    const [late, early] = [width.ofLot(2), width.ofLot(0)];
    expect(late).not.toBe(early);
    expect(width.ofLot(2)).toBe(late);
    // Whoever asks by the same name meets the same lots; in another stock they would differ.
    expect(again.ofLot(0)).toBe(early);
  });
});
