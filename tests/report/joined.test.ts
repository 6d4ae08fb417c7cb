import { describe, expect, it } from 'vitest';
import { joinedJson, joinedOrigin, joinedTexts, unfolded } from '../../src/report/joined.ts';

const FILE = {
  file: 'policies/<a>.yaml',
  text: 'title: <b>',
  sha256: 'ab',
  title: 'Slow down',
  about: 'c',
  helps: 'Where it must.\n',
  hurts: null,
};

describe('what is joined to a scenario', () => {
  it('is told with where it should help and hurt, if it says so', () => {
    expect(joinedTexts([FILE, { ...FILE, helps: null, hurts: 'Elsewhere.' }])).toEqual([
      'Slow down (policies/<a>.yaml). Should help: Where it must.',
      'Slow down (policies/<a>.yaml). Should hurt: Elsewhere.',
    ]);
  });

  it('is in data with its digest, and no key where there is nothing', () => {
    expect(joinedJson([])).toEqual({});
    expect(joinedJson([FILE])).toEqual({
      supplements: [{ file: 'policies/<a>.yaml', title: 'Slow down', sha256: 'ab' }],
    });
  });

  it('is escaped in a page', () => {
    const page = joinedOrigin([FILE]) + unfolded(FILE.file, FILE.text);
    expect(page).toContain('<dd>policies/&lt;a&gt;.yaml</dd>');
    expect(page).toContain('<dd><code>ab</code></dd>');
    expect(page).toContain('title: &lt;b&gt;</pre>');
    expect(page).not.toContain('<a>');
  });
});
