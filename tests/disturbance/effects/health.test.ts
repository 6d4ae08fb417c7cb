import { describe, expect, it } from 'vitest';
import { ran, seconds, small } from '../../line/small-line.ts';
import { disturbed, oneStation } from '../disturbed-line.ts';

const failing = (counted: string) =>
  oneStation(`breakdowns: { jam: { every: 100 s, counted: ${counted}, repair: 20 s, cycle: resumes } }`);
const down = (body: string, run: number) => seconds(ran(small(`${run} s`, body)), 'only', run).down ?? 0;
const worse = (keys: string) => `  worse: { disturbs: health, station: only, ${keys} }`;

describe('a disturbed health', () => {
  it.each(['working', 'clock'])('lets what is left of a life counted by %s run faster', (counted) => {
    // 55 s of 100 have run; the 45 left take 22.5 s: down from 77.5 to 97.5. The next life of 50 s: down 147.5 to 167.5.
    const twice = worse('as-often: 200 %, at: 55 s, for: 1 h');
    expect(down(disturbed(failing(counted), twice), 77)).toBe(0);
    expect(down(disturbed(failing(counted), twice), 97.5)).toBe(20);
    expect(down(disturbed(failing(counted), twice), 157.5)).toBe(30);
    expect(down(failing(counted), 157.5)).toBe(20);
  });

  it.each(['working', 'clock'])('lets it run as designed again when it is over, counted by %s', (counted) => {
    // From 55 to 65 s the life loses 20 s: 25 are left, so it fails at 90.
    const twice = disturbed(failing(counted), worse('as-often: 200 %, at: 55 s, for: 10 s'));
    expect(down(twice, 90)).toBe(0);
    expect(down(twice, 100)).toBe(10);
  });

  it('runs a life down by its mean pace over a ramp', () => {
    // The pace grows evenly from 1 to 3 over 40 s, which uses up 80 s of life, so that it fails 20/3 s later.
    const ramp = disturbed(failing('clock'), worse('as-often: 300 %, ramp: 40 s, at: 0 s, for: 1 h'));
    expect(down(ramp, 60)).toBeCloseTo(60 - (40 + 20 / 3), 6);
  });

  it('lets repairs take longer that begin while it lasts', () => {
    const slow = worse('repairs-take: 300 %, at: 90 s, for: 20 s');
    // Down from 100 to 160, and 20 s from 260 on.
    expect(down(disturbed(failing('clock'), slow), 300)).toBe(80);
  });

  it('may hit one way of breaking down of several', () => {
    const two = oneStation(
      'breakdowns: { jam: { every: 100 s, counted: clock, repair: 20 s, cycle: resumes }, leak: { every: 130 s, counted: clock, repair: 4 s, cycle: resumes } }',
    );
    const jam = worse('breakdown: jam, as-often: 200 %, at: 0 s, for: 1 h');
    // Jams at 50 and 120, each for 20 s; a leak at 130 for 4 s while it stands anyway.
    expect(down(disturbed(two, jam), 145)).toBe(40);
  });
});
