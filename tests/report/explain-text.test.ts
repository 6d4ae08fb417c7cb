import { describe, expect, it } from 'vitest';
import { explain } from '../../src/experiment/explanation.ts';
import { widthOf } from '../../src/report/columns.ts';
import { explainText } from '../../src/report/explain-text.ts';
import { cell } from '../line/prediction/cell.ts';
import { blanks, small } from '../line/small-line.ts';

const flat = (text: string) => text.replace(/\s+/g, ' ');
const told = (given: Parameters<typeof cell>[0], seeds = 2, width = 80) => {
  const scenario = cell(given);
  return explainText(explain(scenario, seeds), scenario, width);
};
const varied = {
  rim: 'tolerance: 0.3 mm, own-sd: 0.1 mm, sheet-sd: 0.1 mm',
  measures: 'rim: { repeatability: 0.1 mm }',
};

describe('explainText', () => {
  it('shows each feature with what it varies by', () => {
    const text = flat(told(varied));
    expect(text).toContain('rim, made at forming: aim 10 mm, limits 9.7 mm to 10.3 mm');
    // Limits 0.3 either way, sd 0.1414: 0.3 / (3 x 0.1414) = 0.71.
    expect(text).toContain('Pp 0.71, Ppk 0.71');
    expect(text).toContain('variance from: own 50.0 %, sheet 50.0 %');
    expect(text).toMatch(/mean, mm 10\.0\d* [\d.]+ [\d.]+ to [\d.]+/);
    expect(text).toContain('2 runs of 2 h after 0 s of warm-up');
  });

  it('shows pairs, gauges and readers', () => {
    const text = flat(told(varied));
    expect(text).toContain('rim in frame.groove: clearance 0 mm to 1 mm');
    // A clearance of mean 0 against least 0: half of them fit.
    expect(text).toMatch(/fits, % 50\.?\d* /);
    // 0.1 / sqrt(0.02 + 0.01).
    expect(text).toContain('rim at gauging: gauge error 57.7 % of the spread of the readings');
    expect(text).toMatch(/not read, % 10\.?\d* /);
  });

  it('says so when a feature does not vary or has no limits', () => {
    expect(flat(told({}))).toContain('aim 10 mm, no limits');
    expect(flat(told({}))).toContain('does not vary');
    expect(flat(told({ rim: 'tolerance: 1 mm' }))).toContain('Pp without bound, Ppk without bound');
  });

  it('marks what differs and says what can cause it', () => {
    const text = told({ ...varied, offLimits: 'scrap' }, 6);
    expect(text).toMatch(/\d \*$/m);
    expect(flat(text)).toMatch(/\* \d+ of \d+ predictions lie outside what the runs allow, at 99 % together/);
    expect(flat(text)).toContain(
      '"gauging" takes parts out, and later stations see only what it lets through',
    );
  });

  it('says so when all agree, and claims nothing on one run', () => {
    expect(flat(told(varied, 6))).toMatch(/No prediction lies outside what the runs allow \(\d+ values/);
    expect(flat(told(varied, 1))).toContain('One run gives no interval');
    expect(told(varied, 1)).not.toContain('*');
  });

  it.each([60, 80, 100])('stays within %d columns', (width) => {
    const long = 'a_feature_with_a_name_much_too_long_for_one_line_of_a_terminal_of_any_sensible_width';
    const text = told(
      {
        ...varied,
        others: `      ${long}: { nominal: 123456.789 mm, tolerance: 1 mm, made-at: trimming, own-sd: 5 mm }`,
      },
      3,
      width,
    );
    for (const line of text.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(width);
  });

  it('of a line without dimensions says that there is nothing to explain', () => {
    const plain = small('1 h', blanks('  press: { does: work, takes: blank, cycle: 9 s, to: good }'));
    const text = flat(explainText(explain(plain, 3), plain, 80));
    expect(text).toContain('There is nothing to explain');
    expect(text).not.toContain('Predicted:');
  });
});
