import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/experiment/simulate.ts';
import { gaugedCell, small } from '../../line/small-line.ts';

/**
 * Readings until the response acted, each time: a tray every 10 s, gauged a second later. The heater is off by so many
 * degrees, 0.1 mm each, until the station is fixed.
 */
function actsAt(
  watch: string,
  { seconds = 400, off = '0 °C', rim = '', reading = '', more = '', cell = {} } = {},
): number[] {
  const rule = `
disturbances:
  off: { disturbs: setting, setting: heater, by: ${off}, at: 95 s, for: 100 h }
policies:
  watch: [{ do: stop-and-fix, station: forming, watch: { at: gauging, ${watch} }, takes: 0 s${more} }]`;
  const scenario = small(
    `${seconds} s`,
    gaugedCell({ rim, reading: reading || 'repeatability: 0 mm', ...cell }) + rule,
  );
  const line = prepare(scenario, 'watch', 1);
  let readings = 0;
  const acted: number[] = [];
  line.gauges.get('gauging')!.readingListeners.push(() => readings++);
  line.curable.get('forming')!.add({ cure: () => acted.push(readings) });
  line.calendar.run(seconds);
  return acted;
}

describe('a response that watches a chart', () => {
  // Trays 1 to 10 are loaded before the heater is off at 95 s; from tray 11 on readings are 1 mm too large. Tray 11 is
  // gauged at 111 s, when tray 12 has been loaded already.
  it('of single readings acts at the first beyond the limit', () => {
    expect(actsAt('of: rim, chart: shewhart, sigma: 0.3 mm, limit: 3', { off: '10 °C' })).toEqual([11, 12]);
    expect(actsAt('of: rim, chart: shewhart, sigma: 0.4 mm, limit: 3', { off: '10 °C' })).toEqual([]);
  });

  it('of means acts when a mean is complete', () => {
    // Means of trays 9 to 12 are 0.5 mm too large, 3.3 sigmas of a mean of four.
    const means = 'of: rim, chart: shewhart, sigma: 0.3 mm, limit: 3, mean-of: 4';
    expect(actsAt(means, { off: '10 °C' })).toEqual([12]);
  });

  it('by a run rule acts at the eighth reading on one side', () => {
    const rule = 'of: rim, chart: shewhart, sigma: 9 mm, limit: 3, run-rules: [8-in-a-row]';
    expect(actsAt(rule, { off: '10 °C' })).toEqual([18]);
  });

  it('of sums acts when what exceeds the slack adds up', () => {
    // Each exceeds it by 1 - 0.5 sigmas: the sum is 2.5 at the fifth, 3 at the sixth.
    const cusum = 'of: rim, chart: cusum, sigma: 1 mm, slack: 0.5, limit: 2.6';
    expect(actsAt(cusum, { off: '10 °C' })).toEqual([16]);
    expect(actsAt(`${cusum}, side: up`, { off: '10 °C' })).toEqual([16]);
    expect(actsAt(`${cusum}, side: down`, { off: '10 °C' })).toEqual([]);
    // From a start of 1.3, which readings on target take down to 0 by the third.
    expect(actsAt(`${cusum}, head-start: 50 %`, { off: '10 °C' })).toEqual([16]);
  });

  it('of running means acts when they get beyond their limits', () => {
    // 0.5, 0.75, 0.875 sigmas; the limit is 1.4 sqrt(0.5 / 1.5) = 0.808.
    const ewma = 'of: rim, chart: ewma, sigma: 1 mm, weight: 50 %, limit: 1.4';
    expect(actsAt(ewma, { off: '10 °C' })).toEqual([13]);
  });

  it('goes by a centre of its own, and starts anew after each fix', () => {
    // Every reading is 1 mm below the centre: -0.5, -1, -1.5 sigmas summed up at the third, sixth, ...
    const cusum = 'of: rim, chart: cusum, sigma: 1 mm, slack: 0.5, limit: 1.4, centre: 101 mm';
    expect(actsAt(cusum, { seconds: 100 })).toEqual([3, 6, 9]);
  });

  it('is deaf for its cool-down', () => {
    const cusum = 'of: rim, chart: cusum, sigma: 1 mm, slack: 0.5, limit: 1.4, centre: 101 mm';
    // Acts at 31 s, and again three readings after 51 s, the last of the deaf time being at 51 s.
    expect(actsAt(cusum, { seconds: 100, more: ', cool-down: 20 s' })).toEqual([3, 7]);
  });

  it('goes on where all it learned from was the same and a mean holds deviations to both sides', () => {
    const watch = 'at: gauging, of: rim, chart: ewma, weight: 50 %, limit: 3, learns: 2, mean-of: 2';
    const rule = `policies:\n  watch: [{ do: stop-and-fix, station: forming, watch: { ${watch} }, takes: 1 s }]`;
    const line = prepare(small('9 s', gaugedCell({ reading: 'repeatability: 0 mm' }) + rule), 'watch', 1);
    let acted = 0;
    line.curable.get('forming')!.add({ cure: () => acted++ });
    const [tell] = line.gauges.get('gauging')!.readingListeners;
    const rim = line.features.get('rim')!;
    for (const value of [100, 100, 101, 99, 101, 101]) tell!(rim, value, null);
    line.calendar.run(9);
    expect(acted).toBe(1);
  });

  it('learns its centre and sigma, and does not act while it learns', () => {
    // Without spread any deviation is beyond all limits.
    expect(actsAt('of: rim, chart: shewhart, learns: 8, limit: 3', { off: '10 °C' })).toEqual([11, 12]);
    expect(actsAt('of: rim, chart: shewhart, learns: 50, limit: 3', { off: '10 °C' })).toEqual([]);
    // With a sigma of 0.1 mm that it must find out, 1 mm is far beyond 5 sigmas, and 0.2 mm is not.
    const learned = 'of: rim, chart: shewhart, learns: 10, limit: 5';
    expect(actsAt(learned, { off: '10 °C', rim: 'own-sd: 0.1 mm' })).toEqual([11, 12]);
    expect(actsAt(learned, { off: '2 °C', rim: 'own-sd: 0.1 mm' })).toEqual([]);
  });

  it('counts the readings of parts whose mark cannot be read', () => {
    // The cell has no marking station, so no mark can be read there.
    const chart = 'of: rim, chart: shewhart, sigma: 0.3 mm, limit: 3';
    const reader = 'repeatability: 0 mm }\n    reader: { reads: 0 %, unread: pass }\n    # {';
    expect(actsAt(chart, { off: '10 °C', reading: reader })).toEqual([11, 12]);
  });
});

describe('a response that watches capability', () => {
  const rim = 'tolerance: 0.6 mm, own-sd: 0.1 mm';

  it('acts when the window is full and the capability too low', () => {
    // A process of Cp 2 and Cpk 2; 3 °C too hot, of Cpk 1.
    const cpk = 'of: rim, capability: cpk, below: 0.5, of-last: 20';
    expect(actsAt(cpk, { rim, off: '0 °C', seconds: 1000 })).toEqual([]);
    expect(actsAt(cpk, { rim, off: '7 °C', seconds: 1000 }).length).toBeGreaterThan(0);
    // Below what no process reaches: acts each time the window is full.
    expect(actsAt('of: rim, capability: ppk, below: 99, of-last: 20', { rim, seconds: 700 })).toEqual([
      20, 40, 60,
    ]);
  });

  it('waits to be sure where it is told so', () => {
    // A process of Pp 2: after 20 readings estimates below 2 are nothing rare, but its upper limit hardly is.
    const pp = 'of: rim, capability: pp, below: 2.0, of-last: 20';
    const doubtful = actsAt(pp, { rim, seconds: 20_000 }).length;
    const sure = actsAt(`${pp}, surely: 99.9 %`, { rim, seconds: 20_000 }).length;
    expect(doubtful).toBeGreaterThan(20);
    expect(sure).toBeLessThan(doubtful / 4);
  });

  it('takes readings without any spread for nothing to judge', () => {
    const plain = { rim: 'tolerance: 0.6 mm', seconds: 1000 };
    expect(actsAt('of: rim, capability: cpk, below: 9, of-last: 20', plain)).toEqual([]);
  });
});
