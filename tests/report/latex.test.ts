import { describe, expect, it } from 'vitest';
import { latex } from '../../src/report/latex.ts';
import { samplePaper } from './paper-sample.ts';

const text = latex(samplePaper());
const lines = text.split('\n');
const body = lines.filter((line) => !line.startsWith('%'));

describe('latex', () => {
  it('escapes every sign that LaTeX takes for more than itself', () => {
    const row = body.find((line) => line.startsWith('{[}x]'))!;
    expect(row.startsWith('{[}x] \\textbackslash{}y\\{z\\} \\$1 \\& ')).toBe(true);
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
