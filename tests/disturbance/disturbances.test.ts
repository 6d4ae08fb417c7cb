import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { blanks, gaugedCell, ran, small } from '../line/small-line.ts';

/** A tray every 10 s, whose rim follows the heater by 0.1 mm/°C as it is when the sheet is loaded, without spread. */
const cell = (disturbances: string) => `${gaugedCell()}disturbances:
${disturbances}`;

/** Deviations of the trays loaded at 0, 10, 20, ... s, in mm. */
function deviations(disturbances: string, seconds: number): number[] {
  const line = prepare(small(`${seconds} s`, cell(disturbances)), 'carry on', 1);
  const seen: number[] = [];
  line.gauges.get('gauging')!.readingListeners.push((_feature, reading) => {
    seen.push(Math.round((reading - 100) * 1e9) / 1e9);
  });
  line.calendar.run(seconds);
  return seen;
}

describe('a disturbed setting', () => {
  it('steps when it begins and returns when it ends', () => {
    const seen = deviations(
      '  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 25 s, for: 30 s }',
      91,
    );
    // In force from 25 to 55 s: trays loaded at 30, 40 and 50.
    expect(seen).toEqual([0, 0, 0, 1, 1, 1, 0, 0, 0]);
  });

  it('builds up evenly over its ramp and then stays', () => {
    const seen = deviations(
      '  hot: { disturbs: setting, setting: heater, by: -10 °C, ramp: 40 s, at: 20 s, for: 60 s }',
      101,
    );
    // 20 + 10 k s sees k/4 of the change, up to the whole. At 80 s it ends, put down before that load.
    expect(seen.slice(0, 8).map(Math.abs)).toEqual([0, 0, 0, 0.25, 0.5, 0.75, 1, 1]);
    expect(Math.min(...seen)).toBe(-1);
    expect(seen.at(-1)).toBe(0);
  });

  it('comes again so long after its end', () => {
    const seen = deviations(
      '  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 5 s, for: 10 s, again-after: 20 s }',
      101,
    );
    // In force 5-15, 35-45, 65-75 and 95-105 s.
    expect(seen).toEqual([0, 1, 0, 0, 1, 0, 0, 1, 0, 0]);
  });

  it('adds up with another', () => {
    const seen = deviations(
      `  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 5 s, for: 30 s }
  cold: { disturbs: setting, setting: heater, by: -4 °C, at: 15 s, for: 30 s }`,
      71,
    );
    expect(seen).toEqual([0, 1, 0.6, 0.6, -0.4, 0, 0]);
  });
});

describe('a supplier that fails', () => {
  const body = (on: string) => `
stock:
  blank: { on-hand: 2, reorder-at: 1, order: 2, lead-time: 15 s }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
${on}`;

  it('delivers what has fallen due when the outage ends', () => {
    // Taken at 0 (one left: ordered for 15 s) and 10. Cut off 12-50, so the two pieces come at 50: cycles end at 10, 20,
    // 60 and 70. The take at 50 leaves one: ordered for 65, on time again; cycles end at 80 and 90.
    const cut = body('disturbances:\n  late: { disturbs: supplier, stock: blank, at: 12 s, for: 38 s }');
    const { counts, stateShares, stockOutShares } = ran(small('90 s', cut));
    // Undisturbed it never waits: 9 by 90 s. So the outage cost the 30 s from 20 to 50, in which 3 would have been made.
    expect(ran(small('90 s', body(''))).counts.good - counts.good).toBe(3);
    expect(counts.good).toBe(6);
    expect(stateShares.only!.starved).toBeCloseTo(30 / 90, 12);
    // Nothing on hand 10-50 and 60-65.
    expect(stockOutShares.blank!).toBeGreaterThan(45 / 90 - 1e-12);
  });

  it('does no harm when nothing falls due meanwhile', () => {
    const idle = body('disturbances:\n  late: { disturbs: supplier, stock: blank, at: 1 s, for: 13 s }');
    expect(ran(small('90 s', idle))).toEqual({ ...ran(small('90 s', body(''))), events: expect.any(Number) });
  });
});

describe('impaired marking', () => {
  it('makes marks that cannot be read while it lasts', () => {
    const { counts } = ran(
      small(
        '200 s',
        `
stock:
  blank: { unlimited: true }
  mate: { unlimited: true }
stations:
  first: { does: work, takes: blank, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 1, cycle: 1 s, takes-hold: 100 %, to: joining }
  joining:
    does: assemble
    buffer: 1
    takes: [mate]
    cycle: 1 s
    fits: []
    misfit: scrap
    reader: { reads: 100 %, unread: scrap }
    to: good
disturbances:
  fading: { disturbs: marks, station: marking, takes-hold: 0 %, at: 45 s, for: 50 s }`,
      ),
    );
    // Marks end at 11, 21, ..., 191; those at 51, 61, 71, 81 and 91 do not take. All but the last of 19 are joined by 200.
    expect(counts).toMatchObject({ unread: 5, scrapped: 5, good: 14 });
  });
});

describe('a stopped station', () => {
  const stopped = (when: string) =>
    small(
      '2000 s',
      `${blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }')}
disturbances:
  stoppage: { disturbs: station, station: only, ${when} }`,
    );

  it('is down while it lasts, as often as it comes', () => {
    // Down 100-150, 250-300, 400-450, ..., 1900-1950: 13 times.
    const { stateShares } = ran(stopped('at: 100 s, for: 50 s, again-after: 100 s'));
    expect(stateShares.only!.down).toBeCloseTo((13 * 50) / 2000, 12);
  });

  it('comes once when nothing is said of coming again', () => {
    expect(ran(stopped('at: 100 s, for: 50 s')).stateShares.only!.down).toBeCloseTo(50 / 2000, 12);
  });

  it('begins at random within the limits of its law, by its own draw for every seed', () => {
    const scenario = stopped('at: { distribution: uniform, low: 100 s, high: 1900 s }, for: 3000 s');
    const begins = [1, 2, 3, 4, 5, 6].map((seed) => {
      const { down } = ran(scenario, 'carry on', seed).stateShares.only!;
      return 2000 * (1 - down);
    });
    for (const at of begins) {
      expect(at).toBeGreaterThanOrEqual(100);
      expect(at).toBeLessThanOrEqual(1900);
    }
    expect(new Set(begins).size).toBe(begins.length);
  });
});

describe('two policies', () => {
  // Bursts at random, of a size that varies: all draws are of the disturbance's own.
  const jams = `  hot: { disturbs: setting, setting: heater, by: { distribution: uniform, low: 1 °C, high: 9 °C }, at: { distribution: exponential, mean: 50 s }, for: { distribution: exponential, mean: 20 s }, burst: { times: 3, apart: { distribution: exponential, mean: 10 s } }, again-after: { distribution: exponential, mean: 100 s } }
policies: { carry on: [], slowly: [{ do: inspect, at: gauging, every: 5 }] }
`;

  it('meet the same disturbance at the same time', () => {
    const upset = (policy: string) => {
      const line = prepare(small('2000 s', cell(jams)), policy, 4);
      const { setting } = line.settings.get('heater')!;
      return Array.from({ length: 2000 }, (_, second) => {
        line.calendar.run(second);
        return setting.deviation(second);
      });
    };
    const [one, other] = [upset('carry on'), upset('slowly')];
    expect(one).toEqual(other);
    expect(new Set(one).size).toBeGreaterThan(10);
  });
});
