import { describe, expect, it } from 'vitest';
import { markdown } from '../../src/report/markdown.ts';
import { samplePaper } from './paper-sample.ts';

const text = markdown(samplePaper());
const lines = text.split('\n');

describe('markdown', () => {
  it('escapes every sign that Markdown takes for more than itself', () => {
    const row = lines.find((line) => line.startsWith('| \\[x\\]'))!;
    expect(row).toContain(
      '| \\[x\\] \\\\y{z} \\$1 &amp; \\#2 \\_3\\_ %4 ^5 \\~6 &lt;b&gt; \\|7\\| \\*8\\* "9" \\`10\\` -- \u2026 new | ',
    );
    expect(lines[0]).toBe('# A &lt;cell&gt; &amp; more');
  });

  it('has as many cells in each row as columns', () => {
    const rows = lines.filter((line) => line.startsWith('|'));
    expect(rows).toHaveLength(2 * (2 + 2));
    for (const row of rows) expect(row.split(/(?<!\\)\|/)).toHaveLength(8);
    expect(rows[1]).toBe('| :--- | ---: | ---: | ---: | ---: | :--- |');
  });

  it('begins no list by what a sentence begins with', () => {
    const named = samplePaper();
    const made = markdown({ ...named, verdict: ['- hold: 1', '2. b'], basis: '3) c' }).split('\n');
    for (const line of ['- \\- hold: 1', '- 2\\. b', '3\\) c']) expect(made).toContain(line);
  });

  it('says where it comes from', () => {
    expect(lines).toContain(
      '- SHA-256 of supplement: 1111111111111111111111111111111111111111111111111111111111111111',
    );
    expect(lines).toContain('- supplement: odd --&gt; name\\_1.yaml');
  });
});
