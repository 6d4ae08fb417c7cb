import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { gaugedCell, ran, seconds, small } from '../line/small-line.ts';

/** One station that takes a blank every 10 s from 0 s on. */
const body = (stock: string, ...responses: string[]) => `
stock:
  blank: { ${stock} }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
policies:
  carry on: []
  reserve: [${responses.map((response) => `{ ${response} }`).join(', ')}]`;
const draw = (below: number, more = '') =>
  `do: draw-on-reserve, stock: blank${more}, when: { stock: blank, below: ${below} }`;
const run = (length: number, text: string, policy = 'reserve') => ran(small(`${length} s`, text), policy);

describe('draw-on-reserve', () => {
  it('puts the whole reserve on hand, once', () => {
    // Three blanks, and the reserve when the last is taken: none waits, and after five it is over.
    const text = body('on-hand: 3, reserve: 2', draw(1));
    const outcome = run(90, text);
    expect(outcome.counts.good).toBe(5);
    expect(seconds(outcome, 'only', 90)).toEqual({ working: 50, starved: 40 });
    expect(outcome.did).toEqual({ drawn_blank_pieces: 2 });
    // Nothing takes it otherwise.
    expect(run(90, text, 'carry on').counts.good).toBe(3);
  });

  it('puts so many on hand each time, as far as there are', () => {
    // One left at 10, two drawn: one left at 30, two drawn; one left at 50, one drawn; one left at 60, none drawn.
    const levels = prepare(
      small('90 s', body('on-hand: 3, reserve: 5', draw(2, ', pieces: 2'))),
      'reserve',
      1,
    );
    const stock = levels.stocks.get('blank')!;
    const at = (time: number) => {
      levels.calendar.run(time);
      return [stock.onHand, stock.reserve.left];
    };
    expect([5, 15, 25, 35, 45, 55, 65, 75].map(at)).toEqual([
      [2, 5],
      [3, 3],
      [2, 3],
      [3, 1],
      [2, 1],
      [2, 0],
      [1, 0],
      [0, 0],
    ]);
  });

  it('is at once there for whatever waits for it', () => {
    // The store that is low is another one: its last piece goes at 20 s, when "only" has waited for 10 s.
    const text = `
stock:
  blank: { on-hand: 1, reserve: 1 }
  other: { on-hand: 3 }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
  clock: { does: work, takes: other, cycle: 10 s, to: good }
policies:
  reserve: [{ do: draw-on-reserve, stock: blank, when: { stock: other, below: 1 } }]`;
    expect(seconds(run(40, text), 'only', 40)).toEqual({ working: 20, starved: 20 });
    // None is ever left: what is drawn is taken at once, and was waited for. A third piece is waited for at the end.
    expect(run(30, text).stocks.blank).toMatchObject({ out_share: 1, fill_rate: 1 / 3 });
  });

  it('is there from the start where it is in force then', () => {
    expect(run(90, body('on-hand: 0, reserve: 2', draw(1))).counts.good).toBe(2);
  });

  it('is held at a cost', () => {
    // 864 a day is 0.01 a second. On hand: 2 from 0 to 10 s, 1 until 20 s, then 2 drawn, 1 from 30 s on, 0 from 40 s on;
    // in reserve 2 until 20 s.
    const text = body('on-hand: 3, reserve: 2, holding: 864', draw(1));
    const { holding_cost: cost, mean_on_hand_pieces: mean } = run(50, text).stocks.blank!;
    expect(cost).toBeCloseTo(0.01 * (20 + 10 + 20 + 10 + 2 * 20), 9);
    expect(mean).toBeCloseTo(60 / 50, 9);
    // Never drawn, it is held for the whole of the run.
    expect(run(50, text, 'carry on').stocks.blank!.holding_cost).toBeCloseTo(0.01 * (20 + 10 + 2 * 50), 9);
  });

  it('does not count when orders are placed, until it is on hand', () => {
    // Ordered at 10 s with one left, as ever, although there are four in reserve.
    const text = body('on-hand: 3, reorder-at: 1, order: 3, lead-time: 100 s, reserve: 4', draw(1));
    expect(run(15, text).stocks.blank!.orders).toBe(1);
    expect(run(15, text, 'carry on').stocks.blank!.orders).toBe(1);
  });

  it('is of the lot that was there at the start', () => {
    // A sheet 1 mm wider or so by its lot alone: those of the reserve are as wide as the first.
    const text = `${gaugedCell({ sheet: 'on-hand: 2, reserve: 2', rim: 'lot-sd: 1 mm' })}
policies:
  reserve: [{ do: draw-on-reserve, stock: sheet, when: { stock: sheet, below: 1 } }]`;
    const line = prepare(small('90 s', text), 'reserve', 1);
    const seen: number[] = [];
    line.gauges.get('gauging')!.readingListeners.push((_, reading) => seen.push(reading));
    line.calendar.run(90);
    expect(seen.length).toBe(4);
    expect(new Set(seen).size).toBe(1);
  });
});
