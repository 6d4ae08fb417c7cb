import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/experiment/simulate.ts';
import { Controls } from '../../../src/line/controls.ts';
import { ran, small } from '../small-line.ts';

/** A station that takes a piece every 10 s from time 0 on; the stock's keys are YAML. */
const body = (stock: string, rest = '') => `
stock:
  blank: { ${stock} }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
${rest}`;
const supplied = (length: string, stock: string, rest = '') => {
  const outcome = ran(small(length, body(stock, rest)));
  return { started: outcome.counts.started, ...outcome.stocks.blank! };
};

describe('a line supplied', () => {
  it('from a base stock orders each piece that is taken', () => {
    // Taken at 0, 10, 20, 30, ...; each is ordered and comes 25 s later, so that one is there whenever it is wanted.
    const seen = supplied('100 s', 'on-hand: 3, up-to: 3, lead-time: 25 s');
    expect(seen).toMatchObject({ started: 11, orders: 11, ordered_pieces: 11, stock_outs: 0, fill_rate: 1 });
    // From 20 s on, one is there half of each 10 s: 3 to 1 pieces at first.
    expect(seen.mean_on_hand_pieces).toBeCloseTo((20 + 10 + 8 * 5) / 100, 12);
    expect(seen.mean_on_order_pieces).toBeCloseTo((10 + 20 + 8 * 25) / 100, 12);
    expect(seen.delivered_pieces).toBe(8);
    expect(seen.cycle_service_level).toBe(1);
    expect(seen.purchase_cost).toBeNull();
  });

  it('up to a level at the reorder point orders what is missing', () => {
    // 5, then 4, 3, 2 at 20 s: four are ordered for 35 s. 1 at 30 s, 5 at 35 s, 4, 3, 2 at 60 s: four for 75 s.
    expect(supplied('70 s', 'on-hand: 5, reorder-at: 2, up-to: 6, lead-time: 15 s')).toMatchObject({
      ...{ started: 8, orders: 2, ordered_pieces: 8, delivered_pieces: 4 },
    });
  });

  it('that is looked at every so often is ordered then alone', () => {
    // Nothing is missing at 0. At 30 s one of four is left: three are ordered for 35 s. At 60 s one again.
    const seen = supplied('70 s', 'on-hand: 4, up-to: 4, review: 30 s, lead-time: 5 s');
    expect(seen).toMatchObject({ orders: 2, ordered_pieces: 6, delivered_pieces: 6, stock_outs: 0 });
    // Looked at once in 40 s it is out from 30 s, wanted at 40 s, and there again at 45 s.
    expect(supplied('70 s', 'on-hand: 4, up-to: 4, review: 40 s, lead-time: 5 s')).toMatchObject({
      ...{ started: 7, stock_outs: 1, fill_rate: 6 / 7, cycle_service_level: 0 },
      out_share: 15 / 70,
    });
  });

  it('in whole lots gets more than it asks for', () => {
    expect(
      supplied('20 s', 'on-hand: 4, up-to: 4, lead-time: 60 s, lots-of: 5, least-order: 6'),
    ).toMatchObject({
      // Ten at 0 s lift the position to 13.
      ...{ orders: 1, ordered_pieces: 10 },
    });
  });

  it('with one order out at a time waits for it before it orders again', () => {
    const keys = 'on-hand: 2, reorder-at: 1, order: 1, lead-time: 25 s';
    // Two are taken at 0 and 10 s, and each is ordered at once, or the second only when the first has come.
    expect(supplied('30 s', keys)).toMatchObject({
      orders: 3,
      mean_on_order_pieces: (10 + 2 * 15 + 2 * 5) / 30,
    });
    expect(supplied('30 s', `${keys}, one-order-at-a-time: yes`)).toMatchObject({
      ...{ orders: 2, mean_on_order_pieces: 1 },
    });
  });

  it('by a supplier whose deliveries fall short orders the rest again', () => {
    const keys = 'on-hand: 10, reorder-at: 9, order: 10, lead-time: 5 s, delivers: { short: ';
    expect(supplied('9 s', `${keys}{ chance: 100 %, share: 0 % } }`.replace('100', '99.9999'))).toMatchObject(
      {
        ...{ orders: 2, ordered_pieces: 20, delivered_pieces: 0, missing_pieces: 10 },
      },
    );
    expect(supplied('9 s', `${keys}{ chance: 100 %, share: 26 % } }`)).toMatchObject({
      ...{ orders: 1, delivered_pieces: 3, missing_pieces: 7 },
    });
  });

  it('inspects what comes in before it can be used', () => {
    // Comes at 5 s, and is there at 25 s: after what was on hand is used up at 0 s, the station waits for it.
    const keys = 'on-hand: 1, reorder-at: 0, order: 10, lead-time: 5 s, delivers: { sound: 50 % }';
    const seen = supplied('29 s', `${keys}, incoming: { takes: 20 s }`);
    expect(seen).toMatchObject({ out_share: 25 / 29, orders: 1 });
    expect(seen.delivered_pieces! + seen.unsound_pieces!).toBe(10);
    expect(seen.unsound_pieces).toBeGreaterThan(0);
  });

  it('throws away what has grown too old, and orders anew', () => {
    // Eight at 0 s, used until 35 s: the other four go; position 0 at 35 s, eight come at 40 s.
    const seen = supplied('50 s', 'on-hand: 8, reorder-at: 0, order: 8, lead-time: 5 s, shelf-life: 35 s');
    expect(seen).toMatchObject({ expired_pieces: 4, orders: 1, delivered_pieces: 8, started: 6 });
  });

  it('goes by rank to the second supplier while the first is out', () => {
    const keys =
      'on-hand: 1, up-to: 1, suppliers: { near: { rank: 1, lead-time: 4 s, price: 2 }, far: { rank: 2, lead-time: 8 s, price: 1 } }';
    const rest =
      'disturbances: { late: { disturbs: supplier, stock: blank, supplier: near, at: 15 s, for: 20 s } }';
    // Ordered near at 0, 10 and 40 s, and far at 20 and 30 s.
    expect(supplied('49 s', keys, rest)).toMatchObject({ purchase_cost: 3 * 2 + 2 * 1, started: 5 });
  });

  it('has random outages that follow the clock', () => {
    // Out from 12 to 42 s and from 54 s on: ordered at 0 comes at 5 s, at 10 s only at 42 s, then one at 47 s.
    // The station waits from 20 to 42 s, works until 52 s, finds one, and works on.
    const keys = 'on-hand: 1, up-to: 1, lead-time: 5 s, outages: { every: 12 s, for: 30 s }';
    expect(supplied('60 s', keys)).toMatchObject({
      started: 4,
      stock_outs: 1,
      out_share: (5 + 32 + 5 + 8) / 60,
    });
  });

  it('counts what it costs', () => {
    const keys =
      'on-hand: 4, reorder-at: 3, order: 2, lead-time: 5 s, price: 1.5, per-order: 7, holding: 864';
    // Taken at 0, 10 and 20 s; ordered at 0 and 20 s; two come at 5 s: 3 pieces for 5 s, 5 for 5 s, 4 for 10 s, 3 after.
    expect(supplied('24 s', keys)).toMatchObject({
      ...{ purchase_cost: 3, ordering_cost: 14, expedite_cost: 0 },
      holding_cost: expect.closeTo((864 * (15 + 25 + 40 + 12)) / 86_400, 9),
    });
  });

  it('lets a policy speed the oldest order up, once, and pays for it', () => {
    const scenario = small(
      '100 s',
      body('on-hand: 1, reorder-at: 0, order: 3, lead-time: 60 s, expedite: { lead-time: 10 s, price: 2.5 }'),
    );
    const line = prepare(scenario, 'carry on', 1);
    const controls = new Controls(line);
    line.calendar.run(20);
    expect(controls.expedite('blank')).toBe(true);
    expect(controls.expedite('blank')).toBe(false);
    line.calendar.run(29);
    expect(line.stocks.get('blank')!.onHand).toBe(0);
    line.calendar.run(30);
    expect(line.stocks.get('blank')!.onHand).toBe(2);
    // The order does not come a second time when it was first due.
    line.calendar.run(65);
    expect(line.stocks.get('blank')!.tally).toMatchObject({ delivered: 3, expedite: 7.5, orders: 2 });
    // That ordered at 50 s is due at 110 s. Asked for at 101 s it comes no sooner, and costs nothing more.
    line.calendar.run(101);
    expect(controls.expedite('blank')).toBe(false);
  });
});

describe('an assembly that lacks mates', () => {
  const cell = (mate: string, keys = '', buffer: number | string = 'unlimited') => `
stock:
  mate: { ${mate} }
stations:
  demand: { does: arrive, every: 10 s, to: serving }
  serving: { does: assemble, buffer: ${buffer}, takes: [mate], cycle: 0 s, fits: [], misfit: scrap, to: good${keys} }`;
  const mates = (length: string, mate: string, keys?: string, buffer?: number) =>
    ran(small(length, cell(mate, keys, buffer))).stocks.mate!;

  it('has each part that waited counted, and each that did not', () => {
    // Parts at 10, 20, ...: one mate at once; those of 20, 30 and 40 s wait until 45 s; 50 and 60 s do not.
    const seen = mates('65 s', 'on-hand: 1, reorder-at: 0, order: 6, lead-time: 35 s');
    expect(seen).toMatchObject({ fill_rate: 3 / 6, stock_outs: 1, cycle_service_level: 0 });
  });

  it('counts parts that go without', () => {
    const seen = mates(
      '65 s',
      'on-hand: 1, reorder-at: 0, order: 6, lead-time: 35 s',
      ', without-mates: scrap',
    );
    expect(seen).toMatchObject({ fill_rate: 3 / 6, stock_outs: 1 });
  });

  it('orders for parts that wait under backorders alone', () => {
    const keys = 'on-hand: 1, up-to: 1, lead-time: 35 s';
    // One ordered at 10 s is all that is missing until it comes at 45 s; owed, one is ordered for every part.
    expect(mates('42 s', keys)).toMatchObject({ orders: 1 });
    expect(mates('42 s', `${keys}, when-short: backorders`)).toMatchObject({ orders: 4 });
  });

  it('notices the part that waits at the door where there is no place in front', () => {
    expect(mates('65 s', 'on-hand: 1, reorder-at: 0, order: 6, lead-time: 35 s', '', 0)).toMatchObject({
      // While its part is at the door, the arrivals wait, too: those of 45 and 55 s come later.
      ...{ fill_rate: 3 / 4, stock_outs: 1 },
    });
    expect(mates('65 s', 'on-hand: 1', '', 0)).toMatchObject({ stock_outs: 1 });
  });

  it('never owes more mates than parts wait for one, though some need none of their own', () => {
    // A mate that does not fit is tried on the next part, which then takes none.
    const line = prepare(
      small(
        '20000 s',
        `
stock:
  sheet: { unlimited: true }
  mate:
    on-hand: 4
    reorder-at: 2
    order: 10
    lead-time: 300 s
    when-short: backorders
    features: { hole: { nominal: 10 mm, own-sd: 0.3 mm } }
parts: { tray: { features: { rim: { nominal: 9 mm, made-at: first, own-sd: 0.3 mm } } } }
stations:
  first: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 20 s, to: second }
  second:
    does: assemble
    buffer: unlimited
    takes: [mate]
    cycle: 1 s
    fits: [{ hole: mate.hole, shaft: rim, least: 0.7 mm, most: 1.3 mm }]
    misfit: scrap
    mate-tries: 3
    to: good`,
      ),
      'carry on',
      1,
    );
    const { inbox } = line.stations.get('second')!;
    const { want } = line.assemblies.get('second')!.on.mates.all[0]!.now;
    let most = 0;
    for (let at = 7; at <= 20_000; at += 7) {
      line.calendar.run(at);
      expect(want.owed, `at ${at} s`).toBeLessThanOrEqual(inbox!.count);
      most = Math.max(most, want.owed);
    }
    expect(most).toBeGreaterThan(5);
  });

  it('by deliveries that are not enough is short in each cycle that something waits through', () => {
    // Three machines need a spare at 100 s. One is there; the others wait for one each, which come at 130 and 160 s.
    const { stocks } = ran(
      small(
        '170 s',
        `
stock:
  blank: { unlimited: true }
  part: { on-hand: 1, reorder-at: 0, order: 1, lead-time: 30 s, one-order-at-a-time: yes }
stations:
  only:
    does: work
    takes: blank
    machines: 3
    cycle: 10 s
    breakdowns: { wear: { every: 100 s, counted: working, repair: 500 s, cycle: resumes, spare: part } }
    to: good`,
      ),
    );
    expect(stocks.part).toMatchObject({ fill_rate: 1 / 3, stock_outs: 2, cycle_service_level: 0 });
  });

  it('for once only is short of what still waits at the end', () => {
    // Of 11 parts that come from 10 s on, 4 find a mate; 2 wait at the end of the warm-up and 5 more at the end.
    const { stocks } = ran(
      small(
        '50 s',
        `
stock: { mate: { on-hand: 4, per-short: 3 } }
stations:
  coming: { does: arrive, every: 10 s, to: only }
  only: { does: assemble, buffer: unlimited, takes: [mate], cycle: 0 s, fits: [], misfit: scrap, to: good }`,
        '60 s',
      ),
    );
    expect(stocks.mate).toMatchObject({ out_share: 1, fill_rate: 0, shortage_cost: 5 * 3 });
  });

  it('has only that mate waited for which is not there', () => {
    // Parts that come at 10, 20, ... 50 s find neither, so that one of them waits for each; a comes at 100 s, and then all five
    // could start but for b, which comes at 900 s.
    const { stocks } = ran(
      small(
        '900 s',
        `
stock:
  a: { on-hand: 0, reorder-at: 0, order: 50, lead-time: 100 s }
  b: { on-hand: 0, reorder-at: 0, order: 50, lead-time: 900 s }
stations:
  coming: { does: arrive, every: 10 s, when-full: lost, to: only }
  only: { does: assemble, buffer: 5, takes: [a, b], cycle: 0 s, fits: [], misfit: scrap, to: good }`,
      ),
    );
    const waited = (name: string) => stocks[name]!.mean_waiting_pieces! * 900;
    expect(waited('a')).toBeCloseTo(90, 9);
    expect(waited('b')).toBeCloseTo(90 + 5 * 800, 9);
  });
});

describe('an assembly that lacks two mates', () => {
  it('has only those parts wait for one that could start but for it', () => {
    // Parts come every 10 s. Both mates are there for the first, at 10 s. The seal comes at 50 s, the pin at 55 s, when both are
    // taken; so it goes on every 45 s, at 100 s too. More parts wait all the time, of which only one could start but for the pin.
    const base = (lead: string) => `{ on-hand: 1, up-to: 1, lead-time: ${lead} }`;
    const { stocks } = ran(
      small(
        '100 s',
        `
stock: { pin: ${base('45 s')}, seal: ${base('40 s')} }
stations:
  arriving: { does: arrive, every: 10 s, when-full: lost, to: joining }
  joining: { does: assemble, buffer: unlimited, takes: [pin, seal], cycle: 1 s, fits: [], misfit: scrap, to: good }`,
      ),
    );
    // On hand at once for the first of three.
    expect(stocks.pin!.fill_rate).toBe(1 / 3);
    // Waited for from 20 s to 55 s, and from the end of the cycle at 56 s to 100 s.
    expect(stocks.pin!.mean_waiting_pieces).toBeCloseTo(0.79, 12);
  });
});
