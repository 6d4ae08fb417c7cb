import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';

/** Lines in the default run. */
const LINES = 200;
const WARM_UP = 100;
const LENGTH = 2000;

const seconds = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((tenths) => `${tenths / 10} s`);

/** Laws of a time; `least` above zero keeps a source from starting parts without end at one instant. */
const law = (least: number) =>
  fc.oneof(
    seconds(least, 20),
    fc.record({ distribution: fc.constant('exponential'), mean: seconds(1, 20) }),
    fc.record({
      distribution: fc.constant('gamma'),
      mean: seconds(1, 20),
      cv: fc.constantFrom('0 %', '30 %', '100 %', '200 %'),
    }),
    fc.record({
      distribution: fc.constant('triangular'),
      low: seconds(least, 3),
      mode: seconds(3, 5),
      high: seconds(5, 20),
    }),
    fc.record({
      distribution: fc.constant('empirical'),
      values: fc.array(seconds(least, 20), { minLength: 1, maxLength: 4 }),
    }),
  );

/** A life with no upper bound: one that always ends before the cycle would be refused where the cycle starts anew. */
const boundless = fc.record({ distribution: fc.constant('exponential'), mean: seconds(1, 20) });
const breakdown = fc
  .record({
    every: law(0.5),
    boundless,
    counted: fc.constantFrom('working', 'clock'),
    repair: law(0),
    cycle: fc.constantFrom('resumes', 'restarts', 'scraps'),
  })
  .map(({ boundless, every, ...rest }) => ({ ...rest, every: rest.cycle === 'resumes' ? every : boundless }));
const breakdowns = fc.option(
  breakdown.map((stop) => ({ stop })),
  { nil: undefined, freq: 2 },
);
const buffer = fc.constantFrom(0, 0, 1, 2, 5, 'unlimited');

const stock = fc.oneof(
  fc.constant({ unlimited: true }),
  fc.record({
    'on-hand': fc.integer({ min: 0, max: 30 }),
    'reorder-at': fc.integer({ min: 0, max: 30 }),
    order: fc.integer({ min: 1, max: 20 }),
    'lead-time': law(0),
  }),
  fc.record({ 'on-hand': fc.integer({ min: 0, max: 30 }) }),
);

/** What stands behind the forming or first station, in any order. */
const behind = fc.record({
  does: fc.constantFrom('work', 'work', 'trim', 'mark', 'gauge', 'assemble'),
  buffer,
  cycle: law(0),
  breakdowns,
  every: fc.integer({ min: 1, max: 3 }),
  rejects: fc.constantFrom('pass', 'scrap', 'bench'),
  reader: fc.option(fc.constantFrom('pass', 'scrap', { 'by-hand': '3 s' }), { nil: undefined }),
  withoutMates: fc.constantFrom('wait', 'scrap'),
});

const line = fc
  .record({
    sheet: stock,
    mate: stock,
    first: fc.record({
      cycle: law(0.5),
      breakdowns,
      perSheet: fc.integer({ min: 1, max: 4 }),
    }),
    behind: fc.array(behind, { maxLength: 4 }),
    bench: fc.record({ cycle: law(0), breakdowns, limit: fc.integer({ min: 1, max: 3 }) }),
    stoppages: fc.array(
      fc.record({
        station: fc.nat(),
        at: law(0),
        for: law(0),
        'again-after': fc.option(law(0.5), { nil: undefined }),
      }),
      { maxLength: 2 },
    ),
    seed: fc.integer({ min: 1, max: 1000 }),
  })
  .map(({ sheet, mate, first, behind, bench, stoppages, seed }) => {
    const name = (i: number) => (i <= behind.length ? `s${i}` : 'good');
    const stations: Record<string, object> = {
      s0: {
        ...{ does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': first.perSheet, cycle: first.cycle },
        ...{ breakdowns: first.breakdowns, to: name(1) },
      },
    };
    let feeder: string | undefined;
    behind.forEach(({ does, every, rejects, reader, withoutMates, ...common }, i) => {
      // A mark is read only behind the station that makes it.
      const marked = !behind.slice(i).some((later) => later.does === 'mark');
      const read = reader && marked && { reader: { reads: '80 %', unread: reader } };
      // The bench sends parts back to one gauge only; it is fed from that gauge, so a bench always has a way out.
      const bench = rejects === 'bench' && does === 'gauge' && feeder === undefined;
      if (bench) feeder = name(i + 1);
      const reject = rejects === 'bench' && !bench ? 'scrap' : rejects;
      const kinds: Record<string, object> = {
        mark: { 'takes-hold': '90 %' },
        gauge: {
          ...{ every, measures: { rim: { bias: '0.1 mm', repeatability: '0.5 mm' } } },
          ...{ 'off-limits': reject, ...read },
        },
        assemble: {
          ...{
            takes: ['mate'],
            'without-mates': withoutMates,
            misfit: 'scrap',
            'mate-tries': every,
            ...read,
          },
          fits: [{ hole: 'mate.groove', shaft: 'rim', least: '0 mm', most: '2 mm' }],
        },
      };
      stations[name(i + 1)] = { does, ...common, ...kinds[does], to: name(i + 2) };
    });
    if (feeder !== undefined) {
      const { limit, ...own } = bench;
      const corrects = { rim: { removes: '50 %', 'own-sd': '0.1 mm' } };
      stations.bench = { does: 'rework', buffer: 'unlimited', ...own, limit, corrects, to: feeder };
    }
    const names = Object.keys(stations);
    const scenario = {
      ...{ mendline: 1, title: 'any', about: 'a line made up at random' },
      run: { 'warm-up': `${WARM_UP} s`, length: `${LENGTH} s`, seeds: 1 },
      stock: { sheet, mate: { ...mate, features: { groove: { nominal: '11 mm', 'own-sd': '0.3 mm' } } } },
      parts: {
        tray: {
          features: {
            rim: {
              nominal: '10 mm',
              tolerance: '0.8 mm',
              'made-at': 's0',
              'own-sd': '0.5 mm',
              'lot-sd': '0.1 mm',
            },
          },
        },
      },
      stations,
      disturbances: Object.fromEntries(
        stoppages.map(({ station, ...when }, i) => [
          `stoppage ${i}`,
          { disturbs: 'station', station: names[station % names.length], ...when },
        ]),
      ),
      policies: { 'carry on': [] },
    };
    // JSON is YAML, and leaves out what is undefined.
    return { text: JSON.stringify(scenario, null, 1), seed };
  });

describe('any line whatever', { timeout: 60_000 }, () => {
  // The run checks itself: parts and stock are conserved, Little's law holds, states fill the time; it throws if not.
  it('keeps the laws of every run, fills its time with states, and runs the same way twice', () => {
    // What the lines made up happened to show: a check over lines where nothing happens would check nothing.
    const shown = { good: 0, reworked: 0, scrapped: 0, blocked: 0, down: 0, outOfStock: 0 };
    fc.assert(
      fc.property(line, ({ text, seed }) => {
        const scenario = parseScenario(text, 'any.yaml');
        const outcome = simulate(scenario, 'carry on', seed);
        for (const shares of Object.values(outcome.stateShares)) {
          const each = Object.values(shares);
          expect(each.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
          for (const share of each) expect(share).toBeGreaterThanOrEqual(0);
        }
        for (const share of Object.values(outcome.stockOutShares)) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1 + 1e-12);
        }
        const { counts } = outcome;
        expect(counts.firstFits).toBeLessThanOrEqual(counts.firstAttempts);
        expect(simulate(scenario, 'carry on', seed)).toEqual(outcome);
        const shares = Object.values(outcome.stateShares);
        if (counts.good > 20) shown.good++;
        if (counts.reworked > 0) shown.reworked++;
        if (counts.scrapped > 0) shown.scrapped++;
        if (shares.some(({ blocked }) => blocked > 0.05)) shown.blocked++;
        if (shares.some(({ down }) => down > 0.05)) shown.down++;
        if (Object.values(outcome.stockOutShares).some((share) => share > 0.05)) shown.outOfStock++;
      }),
      { numRuns: LINES, seed: 20 },
    );
    for (const [what, lines] of Object.entries(shown)) expect(lines, what).toBeGreaterThan(LINES / 20);
  });
});
