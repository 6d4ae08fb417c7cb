import { describe, expect, it } from 'vitest';
import { histogramsSection } from '../../src/report/histograms-page.ts';
import { levelsSection } from '../../src/report/levels-page.ts';
import { lookedJson } from '../../src/report/looked-json.ts';
import { sampleLooked } from './looked-sample.ts';

describe('levels on the page', () => {
  const html = levelsSection(sampleLooked());
  it('are told in words and numbers, too', () => {
    expect(html).toContain('carry on: at first 4.0, mean 2.1, lowest 0.0, highest 4.0, at last 0.0');
    expect(html).toContain('<td>4.0</td><td>2.1</td><td>0.0</td><td>4.0</td><td>0.0</td>');
    expect(html).toContain('in 4 runs');
    expect(html).not.toContain('<script>');
  });
  it('are left out where nothing is limited', () => {
    expect(levelsSection({ ...sampleLooked(), levels: [] })).toBe('');
  });
});

describe('sizes on the page', () => {
  const html = histogramsSection(sampleLooked());
  it('are told with their limits, without the noise of sums', () => {
    expect(html).toContain('limits 9.3 and 9.7 mm');
    expect(html).toContain('<td>20.2</td><td>2.9</td><td>104</td><td>3.8</td>');
    expect(html).not.toContain('<script>');
  });
  it('are left out where nothing has limits', () => {
    expect(histogramsSection({ ...sampleLooked(), sizes: [] })).toBe('');
  });
});

it('what pictures show stands in data', () => {
  const { sizes, levels } = lookedJson(sampleLooked());
  expect(sizes[0]!.policies.map(({ policy, below, above }) => [policy, below, above])).toEqual([
    ['carry on', 1, 3],
    ['<script>', 1, 3],
  ]);
  expect(levels).toMatchObject({ runs: 4, times_s: [3600, 7200, 10800] });
  expect(levels.of[0]!.policies[1]!.mean_pieces).toEqual([4, 2.25, 1]);
});
