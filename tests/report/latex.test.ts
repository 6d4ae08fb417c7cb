import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { latex } from '../../src/report/latex.ts';
import { settingOf } from '../../src/report/latex-columns.ts';
import { escaped } from '../../src/report/latex-signs.ts';
import { samplePaper } from './paper-sample.ts';

const text = latex(samplePaper());
const lines = text.split('\n');
const body = lines.filter((line) => !line.startsWith('%'));

describe('latex', () => {
  it('escapes every sign that LaTeX takes for more than itself', () => {
    const row = body.find((line) => line.startsWith('\\raggedright {[}x]'))!;
    expect(row.startsWith('\\raggedright {[}x] \\textbackslash{}y\\{z\\} \\$1 \\& ')).toBe(true);
    expect(row).toContain(
      '\\& \\#2 \\_3\\_ \\%4 \\textasciicircum{}5 \\textasciitilde{}6 \\textless{}b\\textgreater{} ' +
        '\\textbar{}7\\textbar{} {*}8{*} {\\char34}9{\\char34} `10` -{}- \\ldots{} new & ',
    );
  });

  it('has as many cells in each row as columns, and ends what it begins', () => {
    for (const line of body.filter((one) => one.endsWith(' \\\\')))
      expect(line.split(/(?<!\\)&/)).toHaveLength(6);
    const count = (what: string) => text.split(what).length - 1;
    for (const kind of ['table', 'tabular']) {
      expect(count(`\\begin{${kind}}`)).toBe(2);
      expect(count(`\\end{${kind}}`)).toBe(2);
    }
    // Braces that are no signs of their own close.
    let depth = 0;
    for (const [brace] of body.join('\n').matchAll(/(?<!\\)[{}]/g)) {
      depth += brace === '{' ? 1 : -1;
      expect(depth).toBeGreaterThanOrEqual(0);
    }
    expect(depth).toBe(0);
  });

  it('writes a minus as one', () => {
    expect(text).toMatch(/ & \$-\$\d/);
    expect(body.join('\n')).not.toContain('\u2212');
  });

  it('says in comments where it comes from, each of one line whatever names hold', () => {
    expect(lines).toContain('% supplement: odd --> name_1.yaml');
    expect(lines).toContain('% command: mendline compare a.yaml --only "hold back"');
    expect(lines.slice(0, lines.indexOf('')).every((line) => line.startsWith('% '))).toBe(true);
  });
});

// The ten special characters of L. Lamport, LaTeX: A Document Preparation System, section 2.1 (from memory).
it('leaves no special character of LaTeX to itself, whatever the text', () => {
  const signs = fc.constantFrom(...'&%$#_{}~^\\ab1[*|<>"-`\u2212\u2264\u03a9\u00f6');
  fc.assert(
    fc.property(fc.array(signs), (given) => {
      const bare = escaped(given.join(''))
        .replaceAll('{\\char34}', '')
        .replace(/\$(?:-|\\[A-Za-z]+)\$/g, '')
        .replace(/\\[A-Za-z]+\{\}|\\[&%$#_{}]/g, '')
        .replace(/\{[[*]\}|\{\}/g, '');
      expect(bare).not.toMatch(/[&%$#_{}~^\\]/);
    }),
  );
});

it('breaks long names, and makes letters smaller only where it must', () => {
  expect(settingOf([['a', '1.0']])).toEqual({ before: '', first: 'l', broken: false });
  expect(settingOf([['a'.repeat(90), '1.0']])).toMatchObject({ before: '', broken: true });
  const wide = settingOf([['a'.repeat(90), ...Array<string>(5).fill('1'.repeat(12))]]);
  expect(wide.before).toContain('\\footnotesize');
});
