import { describe, expect, it } from 'vitest';
import { widthOf } from '../../../src/report/columns.ts';
import { crossedText } from '../../../src/report/crossed/crossed-text.ts';
import { changesText } from '../../../src/report/crossed/crossed-words.ts';
import { POLICIES, sampleCrossed } from './sample.ts';

const found = sampleCrossed(8);
const PLAIN = { title: 'T', colour: false, width: 80 };
const text = crossedText(found, PLAIN);
const flat = text.replace(/\s+/g, ' ');

describe('the text of a crossed experiment', () => {
  it('keeps to 80 columns and ends in a new line', () => {
    for (const line of text.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(80);
    expect(text.endsWith('\n')).toBe(true);
  });

  it('has a row a case, and marks who is surely best', () => {
    const row = text.split('\n').find((line) => line.startsWith('a <stop>'))!;
    expect(row).toContain('carry on *');
    expect(text).toContain('severity 0.5');
    expect(flat).toContain('retune <forming> *');
    expect(flat).toContain('* surely best');
  });

  it('says up to which severity who is the best, with an interval', () => {
    // But for luck 100 - 30 s and 90 - 5 s cross at 0.4.
    const [, value, lower, upper] = /up to ([\d.]+) \(([\d.]+) to ([\d.]+)\) carry on, beyond it retune <forming>\./.exec(flat)!; // biome-ignore format: one line reads better
    expect(Number(lower)).toBeLessThan(Number(value));
    expect(Number(upper)).toBeGreaterThan(Number(value));
    expect(flat).toContain('192 runs: 3 policies, 2 cases, each under the same 8 seeds.'); // biome-ignore format: one line reads better
  });

  it('claims nothing of one run', () => {
    const single = crossedText(sampleCrossed(1), PLAIN);
    expect(single).toContain('(no interval)');
    expect(single).toContain('nothing is surely best');
    expect(single).not.toMatch(/[*=]|null|NaN/);
  });
});

describe('changes in words', () => {
  const [one] = found.found;
  const change = { ...one!.changes[0]!, severity: 0.4 };

  it.each([
    [0.3, 0.5, '0.30 to 0.50'],
    [0.3, null, 'not below 0.30'],
    [null, 0.5, 'not above 0.50'],
    [null, null, 'undecided'],
  ])('with ends %s and %s: %s', (lower, upper, told) => {
    const changes = [{ ...change, lower, upper }];
    expect(changesText({ ...one!, changes }, found)).toBe(
      `up to 0.40 (${told}) carry on, beyond it ${POLICIES[1]}.`,
    );
  });

  it('tell several, none, and where there is nothing to tell', () => {
    const again = { ...change, from: POLICIES[1]!, to: POLICIES[2]!, severity: 1.5, lower: 1, upper: null };
    expect(changesText({ ...one!, changes: [{ ...change, lower: 0.3, upper: 0.5 }, again] }, found)).toBe(
      `up to 0.40 (0.30 to 0.50) carry on, from there to 1.50 (not below 1.00) ${POLICIES[1]}, beyond it ${POLICIES[2]}.`,
    );
    expect(changesText({ ...one!, changes: [] }, found)).toBe('carry on at every severity.');
    expect(changesText({ ...one!, first: null, changes: [] }, found)).toBe(
      'no policy gives a value in every run.',
    );
    // Both that have a fit rate have the same.
    const alike = sampleCrossed(4, 'fit_rate');
    expect(changesText(alike.found[0]!, alike)).toBe('all policies are the same in every run.');
    expect(crossedText(alike, PLAIN).replace(/\s+/g, ' ')).toContain(
      `some runs of ${POLICIES[2]} give no value, so the changes leave them out.`,
    );
  });
});
