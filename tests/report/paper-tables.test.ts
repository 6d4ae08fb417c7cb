import { describe, expect, it } from 'vitest';
import { HOSTILE, samplePaper } from './paper-sample.ts';

describe('paperOf', () => {
  it('has a table a measure, with differences and verdicts where there are several policies', () => {
    const { tables, verdict } = samplePaper();
    expect(tables.map(({ key }) => key)).toEqual(['throughput_per_h', 'scrap_rate']);
    const [first] = tables;
    expect(first!.headings).toEqual([
      ...['policy', 'mean', '95 % interval', 'difference', 'its interval', 'verdict'],
    ]);
    expect(first!.rows.map((row) => [row[0], row.at(-1)])).toEqual([
      ['- hold', 'baseline'],
      [HOSTILE, expect.stringMatching(/better|worse|undecided/)],
    ]);
    for (const { headings, sides, rows } of tables)
      for (const row of rows) expect([row.length, sides.length]).toEqual([headings.length, headings.length]);
    expect(verdict[0]).toContain('against - hold');
  });

  it('has a table for each measure against the twins, and their notes once', () => {
    const { tables } = samplePaper(true);
    const twins = tables.filter(({ key }) => key.startsWith('twins-'));
    expect(twins.length).toBeGreaterThan(3);
    expect(twins.filter(({ notes }) => notes.length > 0)).toEqual([twins.at(-1)]);
    expect(twins[0]!.caption).toContain('what the disturbances cost, against the same seeds without them: ');
  });
});
