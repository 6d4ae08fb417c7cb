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

  it('says below a table how many more runs would decide, and what is worth having', () => {
    const { tables, basis } = samplePaper(false, new Map([['throughput_per_h', 2]]));
    expect(tables[0]!.rows[1]!.at(-1)).toBe('undecided');
    expect(tables[0]!.notes).toEqual([
      expect.stringMatching(/^undecided: .*, run about \d+ more\.$/s),
      'Worth having: more than 2 good /h.',
    ]);
    expect(basis).toContain(
      'Worth having: more than 2 good /h in throughput; in the other measures every difference.',
    );
  });

  it('has a table for each measure against the twins, and their notes once', () => {
    const { tables } = samplePaper(true);
    const twins = tables.filter(({ key }) => key.startsWith('twins-'));
    expect(twins.length).toBeGreaterThan(3);
    expect(twins.filter(({ notes }) => notes.length > 0)).toEqual([twins.at(-1)]);
    expect(twins[0]!.caption).toContain('what the disturbances cost, against the same seeds without them: ');
  });
});
