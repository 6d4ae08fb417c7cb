import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { gaugedCell, ran, small } from '../line/small-line.ts';

/** Forms a tray every 10 s and gauges it within a second, without any spread; 1 °C too hot makes it 0.1 mm wider. */
const cell = (more: string, offLimits = 'scrap', gaugeEvery = 1) =>
  `${gaugedCell({ rim: 'tolerance: 0.5 mm', every: gaugeEvery, offLimits })}${more}`;

const hotter = (by: number, at: number) => `
disturbances:
  heater runs hot: { disturbs: setting, setting: heater, by: ${by} °C, at: ${at} s, for: 100 h }`;

/** The readings at the gauge, by part in the order of forming. */
function readings(body: string, policy: string, seconds: number): number[] {
  const line = prepare(small(`${seconds} s`, body), policy, 1);
  const seen: number[] = [];
  line.gauges.get('gauging')!.readingListeners.push((_feature, reading) => seen.push(reading));
  line.calendar.run(seconds);
  return seen;
}

describe('stop-and-fix', () => {
  const body = cell(`${hotter(10, 95)}
policies:
  carry on: []
  stop and fix:
    - do: stop-and-fix
      station: forming
      watch: { at: gauging, sees: off-limits, count: 3, of-last: 3 }
      takes: 60 s`);

  it('without it the disturbance goes on', () => {
    // Trays loaded at 0 to 90 s are good; those of 100 to 380 are gauged by 391 and all scrapped.
    expect(ran(small('400 s', body)).counts).toMatchObject({ good: 10, scrapped: 29 });
  });

  it('holds the station after so many bad sights, and ends what disturbs its settings', () => {
    // Loaded at 100, 110 and 120, gauged by 111, 121 and 131: held at 131 for 60 s. The cycle begun at 130 is finished
    // at 140 and scrapped at 141. Freed of its disturbance, forming loads at 191, 201, ..., 381: gauged by 202 to 392.
    const { counts, stateShares } = ran(small('400 s', body), 'stop and fix');
    expect(counts).toMatchObject({ good: 10 + 20, scrapped: 4 });
    expect(stateShares.forming!.held).toBeCloseTo((191 - 140) / 400, 12);
    expect(stateShares.forming!.working).toBeCloseTo((140 + 209) / 400, 12);
  });

  it('does not count a bad sight that has left the window', () => {
    // One tray in three is gauged: off limits at every sight, but 3 of the last 3 come later, gauged at 121, 151, 181.
    const sampled = cell(
      `${hotter(10, 95)}
policies:
  stop and fix:
    - do: stop-and-fix
      station: forming
      watch: { at: gauging, sees: off-limits, count: 3, of-last: 3 }
      takes: 60 s`,
      'scrap',
      3,
    );
    // Trays 3, 6, ... are gauged, loaded at 20, 50, ..., 110, 140, 170: the third bad sight is at 181.
    const { stateShares } = ran(small('241 s', sampled), 'stop and fix');
    // The cycle begun at 180 ends at 190; held from then to 241.
    expect(stateShares.forming!.held).toBeCloseTo(51 / 241, 12);
  });

  it('heeds nothing for its cool-down, and then counts anew', () => {
    // The disturbance comes again 5 s after it was ended. Held 131-191, deaf to 231.
    const again = cell(`
disturbances:
  heater runs hot: { disturbs: setting, setting: heater, by: 10 °C, at: 95 s, for: 100 h, again-after: 5 s }
policies:
  stop and fix:
    - do: stop-and-fix
      station: forming
      watch: { at: gauging, sees: off-limits, count: 3, of-last: 3 }
      takes: 60 s
      cool-down: 40 s`);
    // Upset again from 196: loaded at 201, 211, 221, 231, 241, gauged by 212, 222, 232, 242, 252. Those of 232, 242
    // and 252 count: held from 252, the cycle of 251 ends at 261.
    const { counts, stateShares } = ran(small('300 s', again), 'stop and fix');
    expect(stateShares.forming!.held).toBeCloseTo((51 + 39) / 300, 12);
    // Good: ten, and the tray loaded at 191. Scrapped: four; 201 to 241; and the one loaded at 251.
    expect(counts).toMatchObject({ good: 11, scrapped: 10 });
  });

  it('ends the fading of marks at the marking station', () => {
    const marked = `
stock:
  sheet: { unlimited: true }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, made-at: forming }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 5, cycle: 2 s, takes-hold: 100 %, to: gauging }
  gauging:
    does: gauge
    buffer: 5
    cycle: 1 s
    every: 1
    measures:
      rim: { repeatability: 0 mm }
    off-limits: pass
    reader: { reads: 100 %, unread: pass }
    to: good
disturbances:
  marks fade: { disturbs: marks, station: marking, takes-hold: 0 %, at: 95 s, for: 100 h }
policies:
  carry on: []
  stop and fix:
    - do: stop-and-fix
      station: marking
      watch: { at: gauging, sees: unread, count: 3, of-last: 3 }
      takes: 30 s`;
    const scenario = small('300 s', marked);
    // Marks end at 12, 22, ..., 292; those from 102 on do not take: 20 of 29.
    expect(ran(scenario).counts).toMatchObject({ unread: 20, good: 29 });
    // The third is met at 122, which holds marking to 152.
    const { counts, stateShares } = ran(scenario, 'stop and fix');
    expect(counts.unread).toBe(3);
    expect(stateShares.marking!.held).toBeCloseTo(30 / 300, 12);
  });
});

describe('inspect', () => {
  const body = cell(
    `${hotter(10, 0)}
policies:
  carry on: []
  all: [{ do: inspect, at: gauging, every: 1 }]
  all and pass: [{ do: inspect, at: gauging, every: 1, off-limits: pass }]
  half: [{ do: inspect, at: gauging, every: 2 }]`,
    'scrap',
    5,
  );
  // Every tray is off limits: the heater is wrong from the first sheet on. In 200 s trays
  // reach gauging at 10, 20, ..., 190 and are done by 200: 19. The 20th comes at 200 s and is gauged whether one part in
  // one, two or five is, so it is not done by then.

  it.each([
    ['carry on', 3, 16],
    ['all', 19, 0],
    ['all and pass', 0, 19],
    ['half', 9, 10],
  ])(
    '%s: gauges one part in so many, and sends what is off limits where it says',
    (policy, scrapped, good) => {
      expect(ran(small('200 s', body), policy).counts).toMatchObject({ scrapped, good });
    },
  );

  it('takes the gauging time for gauged parts only', () => {
    // Done by 200 s: the trays of 50, 100 and 150 s; those of 20, 40, ..., 180 s; all 19.
    for (const [policy, gauged] of [
      ['carry on', 3],
      ['half', 9],
      ['all', 19],
    ] as const) {
      const { stateShares } = ran(small('200 s', body), policy);
      expect(stateShares.gauging!.working).toBeCloseTo(gauged / 200, 12);
    }
  });
});

describe('retune', () => {
  const body = (weight: number, deadband: number, more = '') =>
    cell(
      `${hotter(10, 5)}
policies:
  carry on: []
  retune: [{ do: retune, setting: heater, by: rim, weight: ${weight} %, deadband: ${deadband} mm }]${more}`,
      'pass',
    );

  // Without noise an EWMA of n equal offsets d is d(1 - (1-w)^n), so d(1-w)^n is left: A. Ingolfsson and E. Sachs (1993),
  // Journal of Quality Technology 25, 271-287. Tray j, loaded at 10 j s, profits from the readings of trays 1 to j-2,
  // whose reading ends a second after they are formed; tray 0 was loaded before the step.
  it.each([20, 50, 80, 100])(
    'removes a step by a factor of 1 - weight a reading: weight of %d percent',
    (weight) => {
      const seen = readings(body(weight, 0), 'retune', 400);
      expect(seen.length).toBe(39);
      expect(seen[0]).toBeCloseTo(100, 10);
      for (let j = 1; j < seen.length; j++) {
        expect(seen[j]! - 100).toBeCloseTo((1 - weight / 100) ** Math.max(0, j - 2), 10);
      }
    },
  );

  it('leaves the setting alone while the estimate is within the deadband of what is set', () => {
    // Weight 1/2: estimates 1/2, 3/4, 7/8, 15/16, 31/32, 63/64, ... are set when more than 0.1 from the one in force:
    // 1/2, 3/4, 7/8, then only 63/64, which is 0.109 away. So 1/64 mm stays for ever.
    const seen = readings(body(50, 0.1), 'retune', 400).map((reading) => reading - 100);
    const expected = [0, 1, 1, 1 / 2, 1 / 4, 1 / 8, 1 / 8, 1 / 8, 1 / 64, 1 / 64];
    expected.forEach((off, j) => {
      expect(seen[j]).toBeCloseTo(off, 10);
    });
    expect(seen.at(-1)).toBeCloseTo(1 / 64, 10);
  });

  // The heater makes trays 1 mm too large from tray 1 on, 0.1 mm/°C; tray j profits from the readings up to tray j-2.
  it.each([
    // Cancels the whole offset of tray 1 for tray 3.
    ['rule: deadbeat, deadband: 0 mm', [0, 1, 1, 0, 0, 0]],
    // Believes in 0.2 mm/°C, so it takes away half of what is left; what tray 1 called for, tray 2 calls for again.
    ['rule: deadbeat, deadband: 0 mm, gain: 0.2 mm/°C', [0, 1, 1, 1 / 2, 1 / 2, 1 / 4, 1 / 4, 1 / 8]],
    // 0.3 mm at a time until less than 0.25 is left.
    ['rule: step, step: 3 °C, deadband: 0.25 mm', [0, 1, 1, 0.7, 0.4, 0.1, 0.1, 0.1]],
    // Acts on the means of trays 0 and 1, which is 1/2, and 2 and 3, which is 1.
    ['rule: deadbeat, mean-of: 2, deadband: 0 mm', [0, 1, 1, 1 / 2, 1 / 2, 0, 0, 0]],
  ])('follows its rule: %s', (rule, expected) => {
    const scenario = body(50, 0).replace('weight: 50 %, deadband: 0 mm', rule);
    const seen = readings(scenario, 'retune', 110).map((reading) => reading - 100);
    expected.forEach((off, j) => {
      expect(seen[j], `tray ${j}`).toBeCloseTo(off, 10);
    });
  });

  it('does nothing about a step smaller than the deadband', () => {
    const seen = readings(body(50, 1.5), 'retune', 200);
    expect(seen.at(-1)).toBeCloseTo(101, 10);
  });

  it('follows what the gauge says, so that a biased gauge makes trays that only read right', () => {
    const biased = body(50, 0).replace('rim: { repeatability', 'rim: { bias: 0.2 mm, repeatability');
    const line = prepare(small('900 s', biased), 'retune', 1);
    let reading = 0;
    let truth = 0;
    line.gauges.get('gauging')!.readingListeners.push((feature, value, row) => {
      reading = value;
      truth = line.parts.get(row!, feature.truth);
    });
    line.calendar.run(900);
    expect(reading).toBeCloseTo(100, 6);
    expect(truth).toBeCloseTo(99.8, 6);
  });

  it('learns nothing from trays whose mark cannot be read', () => {
    const unread = body(50, 0).replace(
      'off-limits: pass',
      'off-limits: pass\n    reader: { reads: 0 %, unread: pass }',
    );
    const seen = readings(unread, 'retune', 300);
    expect(seen.at(-1)).toBeCloseTo(101, 10);
  });

  it('learns nothing from trays that were reworked, whose readings say what the bench left', () => {
    // Trays 1 and 2 are loaded before tray 1 is read: they are 1 mm off and go to the bench, which takes all of it away.
    // If their second readings counted, the estimate would fall back to zero and later trays be off again.
    const reworked = body(100, 0)
      .replace('off-limits: pass', 'off-limits: bench')
      .replace(
        'disturbances:',
        `  bench:
    does: rework
    buffer: unlimited
    cycle: 2 s
    limit: 1
    corrects: { rim: { removes: 100 %, own-sd: 0 mm } }
    to: gauging
disturbances:`,
      );
    const offs = readings(reworked, 'retune', 400).map((reading) => reading - 100);
    expect(offs.length).toBe(39 + 2);
    expect(offs.filter((off) => Math.abs(off) > 1e-9).map((off) => Number(off.toFixed(9)))).toEqual([1, 1]);
  });
});

describe('match', () => {
  // Trays of a sheet differ by cavity: clearances to the 10.5 mm groove are 0.5, 0.4, 0.3 and 0.1 mm, margins to the
  // limits 0.05 and 0.55 mm are 0.05, 0.15, 0.25 and 0.05. Assembly takes 100 s, so all of the first sheet wait when
  // its first tray, which came first and alone, is done.
  const body = (every: number, match: string) => `
stock:
  sheet: { unlimited: true }
  frame:
    unlimited: true
    features:
      groove: { nominal: 10.5 mm }
parts:
  tray:
    features:
      rim: { nominal: 10 mm, made-at: forming, cavities: [0 mm, 0.1 mm, 0.2 mm, 0.4 mm] }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 4, cycle: 10 s, to: gauging }
  gauging:
    does: gauge
    buffer: 4
    cycle: 1 s
    every: ${every}
    measures:
      rim: { repeatability: 0 mm }
    off-limits: pass
    to: assembly
  assembly:
    does: assemble
    buffer: 3
    takes: [frame]
    cycle: 100 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0.05 mm, most: 0.55 mm }]
    misfit: scrap
    to: good
policies:
  carry on: []
  match: [{ do: match, at: assembly, ${match}, mate-repeatability: 0 mm, takes: 5 s }]`;

  /** True sizes of the parts in the order in which assembly takes them, and when. */
  function picks(text: string, policy: string) {
    const line = prepare(small('400 s', text), policy, 1);
    const { operation } = line.stations.get('assembly')!.machines[0]!;
    const rim = line.features.get('rim')!;
    const picked: { size: number; at: number }[] = [];
    const begin = operation.begin.bind(operation);
    operation.begin = (station) => {
      const begun = begin(station);
      if (begun) picked.push({ size: line.parts.get(station.load[0]!, rim.truth), at: line.calendar.now });
      return begun;
    };
    line.calendar.run(400);
    return picked;
  }

  it('is not done otherwise: parts are taken as they came', () => {
    const taken = picks(body(1, 'among: 3, guard: 0 mm'), 'carry on');
    expect(taken.map(({ at }) => at)).toEqual([11, 111, 211, 311]);
    [10, 10.1, 10.2, 10.4].forEach((size, k) => {
      expect(taken[k]!.size).toBeCloseTo(size, 10);
    });
  });

  it.each([
    // Without guard, 0.05 is enough, and the hardest of the three that wait is the fourth tray.
    ['among: 3, guard: 0 mm', 10.4],
    // With 0.1 the fourth is too risky; of 0.15 and 0.25 the harder is the second tray.
    ['among: 3, guard: 0.1 mm', 10.1],
    // With 0.3 none is safe: the widest margin, 0.25, is the third tray's.
    ['among: 3, guard: 0.3 mm', 10.2],
    // Among the first two only, the fourth is out of sight.
    ['among: 2, guard: 0 mm', 10.1],
  ])('takes the hardest waiting part that is safe, or the safest: %s', (how, size) => {
    const taken = picks(body(1, how), 'match');
    expect(taken[1]!.size).toBeCloseTo(size, 10);
  });

  it('takes its time for every part', () => {
    expect(picks(body(1, 'among: 3, guard: 0 mm'), 'match').map(({ at }) => at)).toEqual([11, 116, 221, 326]);
  });

  it('goes by readings: parts never gauged all look as designed, and the oldest is taken', () => {
    const taken = picks(body(1000, 'among: 3, guard: 0 mm'), 'match');
    [10, 10.1, 10.2, 10.4].forEach((size, k) => {
      expect(taken[k]!.size).toBeCloseTo(size, 10);
    });
  });
});

describe('rework', () => {
  // Every tray is 1 mm too wide for its frame, whose clearance should be 0.5 to 1.5 mm and is 0.
  const body = (removes: number) => `
stock:
  sheet: { unlimited: true }
  frame:
    unlimited: true
    features:
      groove: { nominal: 11 mm }
parts:
  tray:
    features:
      rim: { nominal: 10 mm, made-at: forming, cavities: [1 mm] }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 30 s, to: assembly }
  assembly:
    does: assemble
    buffer: 5
    takes: [frame]
    cycle: 2 s
    fits: [{ hole: frame.groove, shaft: rim, least: 0.5 mm, most: 1.5 mm }]
    misfit: scrap
    to: good
  bench:
    does: rework
    buffer: unlimited
    cycle: 3 s
    limit: 2
    corrects:
      rim: { removes: ${removes} %, own-sd: 0 mm }
    to: assembly
policies:
  carry on: []
  rework: [{ do: rework, at: assembly, bench: bench }]`;
  // Ten trays reach assembly at 30, ..., 300 s; the last of them is done within the 320 s.

  it('is not done otherwise: misfits are scrapped', () => {
    expect(ran(small('320 s', body(100))).counts).toMatchObject({
      good: 0,
      scrapped: 10,
      reworked: 0,
      tight: 10,
    });
  });

  it('sends misfits to the bench, which brings them within limits', () => {
    const { counts, measures } = ran(small('320 s', body(100)), 'rework');
    // A tray is tight once and good after; first attempts all fail.
    expect(counts).toMatchObject({
      ...{ good: 10, scrapped: 0, reworked: 10, tight: 10, firstAttempts: 10, firstFits: 0 },
    });
    // Forming 30 s, assembly 2 s, bench 3 s, assembly 2 s.
    expect(measures.lead_time_s).toBeCloseTo(37, 9);
  });

  it('removes the share it is said to: after 40 % and 64 % of the deviation the tray fits', () => {
    // Left of 1 mm: 0.6, then 0.36, so that the clearance is 0.4, then 0.64.
    expect(ran(small('320 s', body(40)), 'rework').counts).toMatchObject({
      good: 10,
      reworked: 10,
      tight: 20,
    });
  });

  it('ends in scrap after the visits that the bench allows', () => {
    // Three attempts each: the first and one after each of two visits.
    const { counts, stateShares } = ran(small('320 s', body(0)), 'rework');
    expect(counts).toMatchObject({ good: 0, scrapped: 10, reworked: 10, tight: 30 });
    expect(stateShares.bench!.working).toBeCloseTo((10 * 2 * 3) / 320, 12);
  });
});

describe('a policy of several responses', () => {
  it('knows from the start on which are in force, in whatever order they stand', () => {
    const text = (...responses: string[]) => `
stock:
  blank: { on-hand: 9, reserve: 2 }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
policies:
  both: [${responses.join(', ')}]`;
    const draw = '{ do: draw-on-reserve, stock: blank, when: { not: { response: stop } } }';
    const stop = '{ do: hold, station: only, name: stop, when: { to: 50 s } }';
    const drawn = (text: string, length: string) => ran(small(length, text), 'both').did;
    for (const order of [text(draw, stop), text(stop, draw)]) {
      expect(drawn(order, '49 s')).toEqual({ drawn_blank_pieces: 0 });
      expect(drawn(order, '51 s')).toEqual({ drawn_blank_pieces: 2 });
    }
  });

  it('lets the later hold where two set the same thing', () => {
    const body = cell(
      `${hotter(10, 0)}
policies:
  both:
    - { do: inspect, at: gauging, every: 1, off-limits: scrap }
    - { do: inspect, at: gauging, every: 1, off-limits: pass }`,
    );
    expect(ran(small('200 s', body), 'both').counts).toMatchObject({ scrapped: 0, good: 19 });
  });
});
