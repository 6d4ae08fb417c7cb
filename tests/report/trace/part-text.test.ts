import { describe, expect, it } from 'vitest';
import { clockText } from '../../../src/report/trace/clock-text.ts';
import { partText } from '../../../src/report/trace/part-text.ts';
import { runText } from '../../../src/report/trace/run-text.ts';
import { partJson, runJson } from '../../../src/report/trace/trace-json.ts';
import { oddScenario, oddTrace, SOURCE } from './traced-sample.ts';

describe('clockText', () => {
  it('counts hours beyond a day, and rounds to seconds that a clock has', () => {
    expect([0, 7.4, 59.6, 3599.5, 95400].map(clockText)).toEqual([
      '0:00:00',
      '0:00:07',
      '0:01:00',
      '1:00:00',
      '26:30:00',
    ]);
  });
});

describe('partText', () => {
  const story = (part: number, withTruth: boolean, width = 80) =>
    partText(oddTrace(), oddScenario(), part, { withTruth, width });

  it('tells what happened to a part, worked out by hand', () => {
    expect(story(2, false)).toBe(`An odd cell
Part 2 of 14, policy "-carry on", seed 1

0:00:00  forming   started from sheet 1 of those there at the start, in cavity 2
0:00:10  forming   formed, 10 s after it was begun
0:00:10  marking   waits in front
0:00:11  marking   begun, after 1 s of waiting
0:00:12  marking   marked, 1 s after it was begun
0:00:12  =gauging  begun
0:00:12  =gauging  mark read
0:00:13  =gauging  reads rim 12.25 mm (off limits)
0:00:13  fitting   begun by fitting 1
0:00:14  fitting   tried with frame 2 of those there at the start: too tight
0:00:14  fitting   scrapped: too tight

What it truly is, and no policy sees, is told with --true-values.
`);
  });

  it('tells the truth only when asked, and marks it', () => {
    const told = story(2, true);
    expect(told).toContain('forming   in truth rim is 12 mm\n');
    expect(told).toContain('marking   in truth the mark took\n');
    expect(told).toContain('in truth the clearance is frame.groove \u2212 rim = \u22121 mm\n');
    expect(told).toContain('In truth nothing disturbed the line meanwhile.');
    expect(told).toContain('no gauge, no reader and no policy sees');
    expect(story(2, false)).not.toContain('in truth');
    expect(told.indexOf('clearance')).toBeLessThan(told.indexOf('scrapped'));
  });

  it('keeps within the width, and says where a part is as the run ends', () => {
    for (const width of [60, 80])
      for (const part of [1, 7, 14])
        for (const line of story(part, true, width).split('\n'))
          expect([...line].length).toBeLessThanOrEqual(width);
    expect(story(14, false)).toMatch(/0:01:00 +\S+ +still in the line as the run ends/);
  });
});

describe('runText', () => {
  it('sums up the run, and names a part to ask for', () => {
    const text = runText(oddTrace(), oddScenario(), 80, 'mendline trace odd.yaml');
    expect(text).toContain('Of 14 parts started in 60 s, of which 5 s to warm up, ');
    expect(text).toMatch(/Scrapped: \d too tight\./);
    expect(text).toContain('part 2  0:00:14  fitting  too tight');
    expect(text).toContain('0:00:30 to 0:00:35  @off');
    expect(text).toContain('0:00:30 to 0:00:35  hold (+wait)');
    expect(text).toContain('\n  mendline trace odd.yaml --part 2\n');
    for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  });
});

describe('as JSON', () => {
  it('has the same in keyed units, and the truth only when asked', () => {
    const part = partJson(SOURCE(), 2, false) as Record<string, unknown>;
    expect(part).toMatchObject({
      ...{ format: 'mendline trace 1', policy: '-carry on', seed: 1, warm_up_s: 5, end_s: 60, part: 2 },
      made_from: { stock: 'sheet', lot: 0, piece: 1, cavity: 2 },
      left: { at_s: 14, as: 'scrapped' },
    });
    expect(part).not.toHaveProperty('truth');
    expect(partJson(SOURCE(), 2, true)).toMatchObject({
      truth: [{ at_s: 10, feature: 'rim', size_mm: 12 }, {}, {}],
    });
    const run = runJson(SOURCE()) as { parts: Record<string, number>; scrapped: unknown[] };
    const { started, ...fates } = run.parts;
    expect(Object.values(fates).reduce((sum, count) => sum + count, 0)).toBe(started);
    expect(run.scrapped[0]).toEqual({ part: 2, at_s: 14, station: 'fitting', why: 'tight' });
  });
});
