import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { widthOf } from '../../../src/report/columns.ts';
import { variedCsv } from '../../../src/report/varied/varied-csv.ts';
import { variedJson } from '../../../src/report/varied/varied-json.ts';
import { variedPage } from '../../../src/report/varied/varied-page.ts';
import { variedText } from '../../../src/report/varied/varied-text.ts';
import { listed, madeUp, ranged } from '../../experiment/varied/sample.ts';
import { wobble } from '../fake.ts';

/** Hostile on purpose. */
const NAME = 'press <b>/a key of a name that goes on and on/"mean"';
const bumpy = (values: readonly number[], seed: number) =>
  50 + values.reduce((sum, x, i) => sum + (i + 1) * x, 0) + values.reduce((a, b) => a * b, 0.5) + wobble(values[0]!, seed); // biome-ignore format: one line reads better

const four = ['a', 'b', 'c', 'd'].map((name) => listed(`x/${name}`, ['low', 'high']));
const MADE = {
  'one thing': madeUp('all', [listed('x/a', [1, 2, 5])], {}, bumpy),
  'all combinations': madeUp('all', [listed(NAME, [1, 2, 5]), listed('x/b', ['few', 'many'])], {}, bumpy),
  'three things': madeUp('all', [listed('x/a', [1, 2]), listed('x/b', [3, 4]), listed('x/c', [0, 1])], {}, bumpy), // biome-ignore format: one line reads better
  'a fraction': madeUp('fraction', four, { count: 8 }, bumpy),
  'a hypercube': madeUp('latin', [ranged('x/a', 0, 1), ranged(NAME, 1, 9, true)], { count: 20 }, bumpy),
  screening: madeUp('screen', [ranged('x/a', 0, 1), ranged(NAME, 1, 9, true)], { count: 4 }, bumpy),
  'screening by one path and seed': madeUp('screen', [ranged('x/a', 0, 1)], { count: 1, seeds: 1 }, bumpy),
  'one seed': madeUp('all', [listed('x/a', [1, 2])], { seeds: 1 }, bumpy),
  'runs without a value': madeUp('all', [listed('x/a', [1, 2])], {}, () => null),
  'no change in any run': madeUp('all', [listed('x/a', [1, 2])], {}, () => 7),
};
const PROVENANCE = { file: 'a.yaml', title: 'A <cell>', sha256: 'abc', joined: [], modules: [], version: '1', command: 'c' }; // biome-ignore format: one line reads better
const textOf = (name: keyof typeof MADE) => variedText(MADE[name].varied, { title: 'T', colour: false, width: 80 }); // biome-ignore format: one line reads better
const flat = (name: keyof typeof MADE) => textOf(name).replace(/\s+/g, ' ');

describe.each(Object.keys(MADE) as (keyof typeof MADE)[])('the report of %s', (name) => {
  it('is text of 80 columns at most, and a page that escapes names, runs nothing and reads well aloud', () => {
    for (const line of textOf(name).split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(80);
    expect(textOf(name)).not.toMatch(/NaN|undefined|\bnull\b|Infinity/);
    const page = variedPage(MADE[name].varied, PROVENANCE);
    expect(page).not.toMatch(/<script|NaN|undefined|\bnull\b|Infinity|<cell>|<b>/);
    const { document } = parseHTML(page);
    const ids = ([...document.querySelectorAll('[id]')] as { id: string }[]).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const svg of [...document.querySelectorAll('figure svg[role]')])
      expect((svg as { getAttribute(name: string): string }).getAttribute('aria-label')).toMatch(
        /^(throughput|Size)/,
      );
    expect(variedPage(MADE[name].varied, PROVENANCE)).toBe(page);
  });
});

describe('the text', () => {
  it('tells effects, which side of zero they surely lie on, and what came out best', () => {
    expect(flat('one thing')).toContain('effects on throughput, good /h: against the mean over all settings');
    expect(textOf('one thing')).toMatch(/x\/a = 5 +\+\d.* above 0/);
    expect(flat('one thing')).toContain('Best mean of 3 settings as observed');
    expect(flat('one thing')).toContain('The best of many looks better than it is');
    expect(textOf('no change in any run')).toMatch(/x\/a +0.* none/);
  });

  it('says what a fraction cannot tell apart', () => {
    expect(flat('a fraction')).toContain('By 8 of 16 settings (resolution 4) not all can be told apart: x/a \u00d7 x/b holds x/c \u00d7 x/d as well'); // biome-ignore format: one line reads better
  });

  it('says what one seed cannot, and what runs without a value cannot', () => {
    expect(flat('one seed')).toContain('One seed gives no interval, so no effect is told from luck.');
    expect(textOf('one seed')).toContain('not told');
    expect(flat('screening by one path and seed')).toContain('One seed a path does not tell luck');
    expect(flat('runs without a value')).toContain('Some runs give no throughput, so no effect can be told');
  });

  it('shows the best of many settings, and all of few', () => {
    expect(textOf('a hypercube')).toContain('the best 12 of 20 settings');
    expect(flat('a hypercube')).toMatch(/A plane accounts for \d+\.\d %/);
  });
});

describe('the page', () => {
  const figures = (name: keyof typeof MADE) => {
    const { document } = parseHTML(variedPage(MADE[name].varied, PROVENANCE));
    return [...document.querySelectorAll('figure')].length;
  };
  it('has a chart a factor, one of two together, and one of screening where it can', () => {
    const { document } = parseHTML(variedPage(MADE['all combinations'].varied, PROVENANCE));
    // By one value each, and by both together.
    expect([...document.querySelectorAll('#charts tbody tr')]).toHaveLength(3 + 2 + 6);
    expect(figures('one thing')).toBe(1);
    expect(figures('all combinations')).toBe(3);
    expect(figures('a fraction')).toBe(4);
    expect(figures('a hypercube')).toBe(2);
    expect(figures('screening')).toBe(1);
    expect(figures('screening by one path and seed')).toBe(0);
    expect(figures('runs without a value')).toBe(0);
    // Three things of two values: those two together that surely do something beyond what each does.
    expect(figures('three things')).toBeGreaterThanOrEqual(3);
  });
});

describe('the data', () => {
  it('holds every effect, setting and run, whole', () => {
    const { varied, runs } = MADE['all combinations'];
    const scenario = { file: 'a.yaml', title: 'A', sha256: 'abc' };
    const document = variedJson({ varied, runs, version: '1', command: ['vary', 'a.yaml'], scenario, joined: [], modules: [] }); // biome-ignore format: one line reads better
    expect(document).toMatchObject({ design: 'all', seeds: 3, policy: 'carry on', effects_are: 'levels' });
    expect(document.varied.map(({ values }) => values)).toEqual([[1, 2, 5], ['few', 'many']]); // biome-ignore format: one line reads better
    expect(document.effects).toHaveLength(3 + 2 + 6);
    expect(document.effects[5]).toMatchObject({ of: [NAME, 'x/b'], at: [1, 'few'], mixed_with: [] });
    expect(document.settings.map(({ setting }) => setting)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(document.best).toBe(6);
    expect(document.runs).toHaveLength(18);
    expect(document.runs[0]).toMatchObject({ setting: 1, policy: 'carry on', seed: 1 });
  });

  it('is a table with the values at each run', () => {
    const { varied, runs } = MADE['all combinations'];
    const [head, first] = variedCsv(varied.factors, varied.design, runs).split('\r\n');
    expect(head).toMatch(/^setting,"stations\/press <b>\/.*""mean""",stations\/x\/b,policy,seed,throughput_per_h,/); // biome-ignore format: one line reads better
    expect(first).toMatch(/^1,1,few,carry on,1,\d/);
  });
});
