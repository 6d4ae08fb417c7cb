import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/experiment/simulate.ts';
import { small } from '../../line/small-line.ts';
import { disturbed } from '../disturbed-line.ts';

const marked = (keys = '') => `
stock:
  sheet: { unlimited: true }
parts: { tray: { features: {} } }
stations:
  forming: { does: form, takes: sheet, makes: tray, per-sheet: 1, cycle: 10 s, to: marking }
  marking: { does: mark, buffer: 4, cycle: 2 s, takes-hold: 100 %, ${keys && `${keys}, `}to: gauging }
  gauging:
    does: gauge
    buffer: 4
    cycle: 2 s
    every: 1
    measures: {}
    off-limits: pass
    reader: { reads: { A: 100 %, B: 100 %, C: 100 %, D: 0 % }, unread: pass }
    to: good
`;
const unread = (keys: string, seconds: number) =>
  simulate(
    small(`${seconds} s`, disturbed(marked(), `  bad: { disturbs: marks, station: marking, ${keys} }`)),
    'carry on',
    1,
  ).counts.unread;

describe('disturbed marks', () => {
  it('fail the more the further a ramp has come, in the mean by half', () => {
    // From all to none over 20000 s: of 2000 marks 1000 in the mean; the variance of their sum is that of 2000 draws of
    // mean chances, sum of p (1 - p) = 2000 / 6, so 5 standard deviations are 92.
    const failed = unread('takes-hold: 0 %, ramp: 20000 s, at: 0 s, for: 1 d', 20010);
    expect(Math.abs(failed - 1000)).toBeLessThan(92);
  });

  it('fall to worse grades the more the further a ramp has come', () => {
    const failed = unread('grades: { D: 100 % }, ramp: 20000 s, at: 0 s, for: 1 d', 20010);
    expect(Math.abs(failed - 1000)).toBeLessThan(92);
  });

  it('draw how many take each time, from bounds', () => {
    // Of each hour 360 marks: between 0 and 50 % of all take.
    const failed = unread(
      'takes-hold: { distribution: uniform, low: 0 %, high: 50 % }, at: 0 s, for: 3600 s, again-after: 1 s',
      36000,
    );
    expect(failed / 3600).toBeGreaterThan(0.5);
    expect(failed / 3600).toBeLessThan(1);
  });
});
