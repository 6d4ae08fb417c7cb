import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { gaugedCell, ran, seconds, small } from '../line/small-line.ts';
import { disturbed, leaves, oneStation, readings, runFor } from './disturbed-line.ts';

const stopped = (keys: string) =>
  disturbed(oneStation(), `  jam: { disturbs: station, station: only, ${keys} }`);
const down = (keys: string, run: number, seed = 1) =>
  seconds(ran(small(`${run} s`, stopped(keys)), 'carry on', seed), 'only', run).down ?? 0;

describe('a burst', () => {
  it('comes so many times, so far apart', () => {
    const keys = 'at: 100 s, for: 5 s, burst: { times: 3, apart: 10 s }';
    // 100-105, 115-120, 130-135.
    expect([100, 105, 115, 120, 130, 135, 900].map((at) => down(keys, at))).toEqual([
      0, 5, 5, 10, 10, 15, 15,
    ]);
  });

  it('comes again as a whole, counted from its last end', () => {
    const keys = 'at: 100 s, for: 5 s, burst: { times: 3, apart: 10 s }, again-after: 100 s';
    // Again from 235 on: 235-240, 250-255, 265-270; and from 370 on.
    expect([235, 240, 270, 370, 375].map((at) => down(keys, at))).toEqual([15, 20, 30, 30, 35]);
  });
});

describe('a disturbance after a count of parts', () => {
  it('comes when a station has finished them', () => {
    // The fifth part is finished at 50; down until 80; the sixth, begun at 50, takes its 10 s then.
    expect(leaves(stopped('after: { parts: 5, of: only }, for: 30 s'), 95)).toEqual([10, 20, 30, 40, 50, 90]);
  });

  it('comes when they have left as good', () => {
    expect(leaves(stopped('after: { parts: 2 }, for: 30 s'), 65)).toEqual([10, 20, 60]);
  });

  it('comes again by time', () => {
    const keys = 'after: { parts: 5, of: only }, for: 30 s, again-after: 20 s';
    // 50-80, 100-130.
    expect([100, 130].map((at) => down(keys, at))).toEqual([30, 60]);
  });

  it('counts all the parts of a load', () => {
    const two = `${oneStation()}`.replace(
      'does: work, takes: blank,',
      'does: form, takes: blank, makes: tray, per-sheet: 2,',
    );
    const body = disturbed(
      `${two}parts: { tray: { features: {} } }\n`,
      '  jam: { disturbs: station, station: only, after: { parts: 5, of: only }, for: 30 s }',
    );
    // Five are finished with the third load, at 30.
    expect(leaves(body, 75)).toEqual([10, 10, 20, 20, 30, 30, 70, 70]);
  });
});

describe('a disturbance that fades', () => {
  it('goes evenly, counts as there until it has gone, and comes again after that', () => {
    const seen = readings(
      '  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 5 s, for: 10 s, fades: 40 s, again-after: 20 s }',
      141,
    );
    // Whole from 5 to 15, gone at 55; again from 75 to 85, gone at 125. Loaded at 0, 10, 20, ...
    expect(seen).toEqual([0, 1, 0.875, 0.625, 0.375, 0.125, 0, 0, 1, 0.875, 0.625, 0.375, 0.125, 0]);
  });

  it('goes from where a ramp that was cut off had come to', () => {
    const seen = readings(
      '  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 0 s, ramp: 40 s, for: 20 s, fades: 20 s }',
      61,
    );
    expect(seen).toEqual([0, 0.25, 0.5, 0.25, 0, 0]);
  });

  it('ends at once when it is cured', () => {
    const seen: number[] = [];
    const body = disturbed(
      gaugedCell(),
      '  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 0 s, for: 20 s, fades: 100 s }',
    );
    const line = prepare(small('60 s', body), 'carry on', 1);
    line.gauges.get('gauging')!.readingListeners.push((_feature, reading) => seen.push(reading - 100));
    line.calendar.run(25);
    for (const it of [...line.curable.get('forming')!]) it.cure();
    line.calendar.run(60);
    expect(seen.map((one) => Math.round(one * 1e6) / 1e6)).toEqual([1, 1, 1, 0, 0]);
    expect(line.curable.get('forming')!.size).toBe(0);
  });
});

describe('a size that varies', () => {
  it('is drawn each time it comes, by the law given', () => {
    // In force from 5 to 14, 15 to 24, ..., so that each load but the first meets another draw.
    const seen = readings(
      '  hot: { disturbs: setting, setting: heater, by: { distribution: empirical, values: [10 °C, -10 °C] }, at: 5 s, for: 9 s, again-after: 1 s }',
      2011,
    ).slice(1);
    expect(new Set(seen)).toEqual(new Set([1, -1]));
    const up = seen.filter((one) => one > 0).length;
    // 200 tosses: 5 standard deviations are 35.
    expect(Math.abs(up - 100)).toBeLessThan(35);
  });

  it('of a normal law has its mean and spread', () => {
    // In force from 5 to 14, 15 to 24, ..., so that each load but the first meets another draw.
    const seen = readings(
      '  hot: { disturbs: setting, setting: heater, by: { distribution: normal, mean: -6 °C, sd: 1 °C }, at: 5 s, for: 9 s, again-after: 1 s }',
      10011,
    ).slice(1);
    const mean = seen.reduce((sum, one) => sum + one, 0) / seen.length;
    const sd = Math.sqrt(seen.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (seen.length - 1));
    // In mm at 0.1 mm/°C; 4 standard errors of 1000 draws.
    expect(Math.abs(mean + 0.6)).toBeLessThan((4 * 0.1) / Math.sqrt(1000));
    expect(Math.abs(sd - 0.1)).toBeLessThan((4 * 0.1) / Math.sqrt(2000));
  });
});

describe('a disturbance that comes to nothing', () => {
  it.each([
    'disturbs: speed, station: only, to: 100 %, at: 5 s, for: 1 h',
    'disturbs: station, station: only, cycle: scraps, at: 5 s, for: 0 s',
  ])('leaves the run as it is, event by event: %s', (keys) => {
    const calm = ran(small('500 s', oneStation()));
    expect(JSON.stringify(ran(small('500 s', disturbed(oneStation(), `  none: { ${keys} }`))))).toBe(
      JSON.stringify(calm),
    );
    expect(runFor(50, oneStation()).tally.good).toBe(5);
  });
});
