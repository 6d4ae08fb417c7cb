import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { BORN } from '../../src/line/part-table.ts';
import { gaugedCell, ran, seconds, small } from './small-line.ts';

interface Seen {
  readonly reading: number;
  readonly truth: number;
  readonly born: number;
  readonly now: number;
}

/** Each reading taken in a run. */
function readings(length: string, keys: Parameters<typeof gaugedCell>[0], seed = 1): Seen[] {
  const line = prepare(small(length, gaugedCell(keys)), 'carry on', seed);
  const found: Seen[] = [];
  const { parts, calendar } = line;
  line.gauges.get('gauging')!.readingListeners.push((feature, reading, row) => {
    found.push({
      reading,
      truth: parts.get(row!, feature.truth),
      born: parts.get(row!, BORN),
      now: calendar.now,
    });
  });
  calendar.run(Number.parseFloat(length));
  return found;
}

describe('a reading', () => {
  it('is rounded to the resolution, after bias and noise', () => {
    const keys = (extra: string) => ({
      rim: 'own-sd: 0.5 mm',
      reading: `bias: 0.3 mm, repeatability: 0.2 mm${extra}`,
    });
    const rounded = readings('1000 s', keys(', resolution: 0.05 mm'));
    const plain = readings('1000 s', keys(''));
    expect(rounded.length).toBe(99);
    for (const [i, { reading }] of rounded.entries()) {
      const steps = reading / 0.05;
      expect(steps).toBeCloseTo(Math.round(steps), 9);
      expect(Math.abs(reading - plain[i]!.reading)).toBeLessThanOrEqual(0.025 + 1e-9);
    }
  });

  // The true size is 100.03 mm and so is the limit; 100.03 = 10003 x 0.01 is not exact in binary.
  it.each([
    ['100.03 mm', 0],
    ['100.04 mm', 99],
  ])('of %s that is rounded to the limit of 100.03 mm is within it', (mould, scrapped) => {
    const body = gaugedCell({
      rim: `tolerance: 0.03 mm, mould: ${mould}`,
      reading: 'repeatability: 0 mm, resolution: 0.01 mm',
      offLimits: 'scrap',
    });
    expect(ran(small('1000 s', body)).counts.scrapped).toBe(scrapped);
  });

  it('takes its time, added to the cycle', () => {
    const body = gaugedCell({ reading: 'repeatability: 0 mm, takes: 1.5 s' });
    // 9 of the parts of 10, 20, ... have been gauged by 100, each for 1 + 1.5 s.
    expect(seconds(ran(small('100 s', body)), 'gauging', 100)).toEqual({ working: 22.5, starved: 77.5 });
  });

  it.each([
    ['guard: 0.02 mm', '100.085 mm', 99],
    ['guard: 0.01 mm', '100.085 mm', 0],
    ['guard: 0.02 mm', '99.915 mm', 99],
    ['guard: 0.01 mm', '99.915 mm', 0],
  ])('just within the tolerance is judged with %s: %s', (guard, mould, scrapped) => {
    const body = gaugedCell({
      rim: `tolerance: 0.1 mm, mould: ${mould}`,
      reading: `repeatability: 0 mm, ${guard}`,
      offLimits: 'scrap',
    });
    expect(ran(small('1000 s', body)).counts.scrapped).toBe(scrapped);
  });
});

describe('appraisers', () => {
  const offsets = (appraisers: number, seed: number) =>
    readings(
      '3000 s',
      {
        rim: 'own-sd: 0.5 mm',
        reading: 'repeatability: 0 mm, reproducibility: 0.1 mm',
        ...(appraisers > 1 ? { more: `appraisers: ${appraisers}` } : {}),
      },
      seed,
    ).map(({ reading, truth }) => Number((reading - truth).toFixed(9)));

  it('have one offset each throughout a run, and another in another run', () => {
    const alone = new Set(offsets(1, 1));
    expect(alone.size).toBe(1);
    expect(new Set(offsets(1, 2))).not.toEqual(alone);
    const three = offsets(3, 1);
    expect(new Set(three).size).toBe(3);
    // Who gauges is even: of 299 parts each has about a third, with a standard deviation of 8.2; four of these.
    for (const offset of new Set(three)) {
      const share = three.filter((one) => one === offset).length;
      expect(Math.abs(share - three.length / 3)).toBeLessThan(33);
    }
  });

  it('gauge the same parts whatever number of parts is gauged', () => {
    const of = (every: number) =>
      new Map(
        readings('3000 s', {
          rim: 'own-sd: 0.5 mm',
          reading: 'repeatability: 0.05 mm, reproducibility: 0.1 mm',
          more: 'appraisers: 3',
          every,
        }).map(({ born, reading }) => [born, reading]),
      );
    const [all, few] = [of(1), of(7)];
    expect(few.size).toBe(42);
    for (const [born, reading] of few) expect(reading).toBe(all.get(born));
  });
});

describe('the parts that are gauged', () => {
  it('are the next after each period of the clock', () => {
    // A part comes every 10 s, so the next after 25, 50, 75 and 100 come at 30, 50, 80 and 100, and are read a second later.
    expect(readings('104 s', { inspection: 'every: 25 s' }).map(({ now }) => now)).toEqual([31, 51, 81, 101]);
  });

  it('are the first of each delivery', () => {
    // 3 sheets at the start, then deliveries of 4: sheets 1, 4, 8 and 12 begin one; two of each are gauged.
    const sheet = 'on-hand: 3, reorder-at: 3, order: 4, lead-time: 1 s';
    const found = readings('145 s', { sheet, inspection: 'first-of-lot: 2' });
    expect(found.map(({ born }) => born / 10 + 1)).toEqual([1, 2, 4, 5, 8, 9, 12, 13]);
  });
});
