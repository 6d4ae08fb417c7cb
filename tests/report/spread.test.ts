import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { spreadOf } from '../../src/experiment/spread.ts';
import { targetsMet } from '../../src/experiment/targets.ts';
import { MEASURES } from '../../src/line/measures.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { widthOf } from '../../src/report/columns.ts';
import { comparisonJson } from '../../src/report/json.ts';
import { comparisonPage } from '../../src/report/page.ts';
import { paperOf } from '../../src/report/paper-tables.ts';
import { overAllCells, spreadNote } from '../../src/report/spread-cells.ts';
import { comparisonText, singleText } from '../../src/report/terminal.ts';
import { outcome } from './fake.ts';
import { ORIGIN } from './origin-sample.ts';
import { sampleOutcomes, samplePage } from './sample.ts';

const PLAIN = { title: 'T', colour: false, width: 80 };
const namesOf = (outcomes: readonly Outcome[]) => [...new Set(outcomes.map(({ policy }) => policy))];
const flat = (text: string) => text.replace(/\s+/g, ' ');
const outcomes = sampleOutcomes();
const policies = namesOf(outcomes);
const comparison = compare(policies, outcomes);
const spread = spreadOf(policies, outcomes);
const targets = targetsMet(
  [
    { measure: MEASURES[0], limit: 42.5 },
    { measure: MEASURES[1], limit: 0.05 },
  ],
  policies,
  outcomes,
);
const page = (more = {}) => parseHTML(comparisonPage({ ...samplePage(), spread, targets, ...more })).document;

/** Runs of a policy <a> of which one in ten is far out, against one that is always the same. */
const skewed = Array.from({ length: 30 }, (_, i) => [
  outcome('base', i + 1, { throughput_per_h: 40, scrap_rate: 0.25 }, { scrap_rate: [1, 4] }),
  outcome(
    '<a>',
    i + 1,
    { throughput_per_h: i % 10 === 0 ? 90 : 40, scrap_rate: i % 2 === 0 ? 0.5 : 0.1 },
    { scrap_rate: i % 2 === 0 ? [1, 2] : [10, 100] },
  ),
])
  .flat()
  .sort((one, other) => Number(one.policy === '<a>') - Number(other.policy === '<a>'));
const SKEWED = ['base', '<a>'];

describe('how bad a run can be, on the page', () => {
  it('has a table for each measure with a row for each policy, and one chart that tells what it shows', () => {
    const section = page().querySelector('#spread')!;
    for (const { measure } of spread.measures) {
      const table = section.querySelector(`[aria-labelledby="table-spread-${measure.key}"]`)!;
      expect([...table.querySelectorAll('tbody th')].map((cell) => cell.textContent)).toEqual(policies);
    }
    const charts = [...section.querySelectorAll('svg')];
    expect(charts).toHaveLength(1);
    for (const name of policies) expect(charts[0]!.getAttribute('aria-label')).toContain(`${name}: median`);
    // Every run of every policy has its dot.
    expect(charts[0]!.querySelectorAll('circle')).toHaveLength(outcomes.length);
    expect(page().querySelector('#reading')!.textContent).toContain('by the jackknife');
  });

  it('is left out of one run, and of a page that is not given it', () => {
    const one = outcomes.filter(({ seed }) => seed === 1);
    expect(page({ spread: spreadOf(policies, one) }).querySelector('#spread')).toBeNull();
    expect(parseHTML(comparisonPage(samplePage())).document.querySelector('#spread')).toBeNull();
  });

  it('draws no more than can be told apart', () => {
    const many = Array.from({ length: 900 }, (_, i) => outcome('one', i + 1, { throughput_per_h: i }));
    const found = { comparison: compare(['one'], many), spread: spreadOf(['one'], many), targets: [] };
    expect(page(found).querySelectorAll('#spread circle').length).toBe(200);
  });

  it('says how many runs it takes where there are too few', () => {
    expect(spreadNote(5)).toBe('5 runs: an interval of a median takes 6 runs, one of a bad run 29.');
    expect(spreadNote(20)).toContain('an interval of a bad run takes 29');
    expect(spreadNote(29)).not.toContain('takes');
  });
});

describe('ratios over all runs', () => {
  it('stand beside the mean of runs where they come to something else, and nowhere else', () => {
    const found = overAllCells(spreadOf(SKEWED, skewed), compare(SKEWED, skewed));
    expect(found.map(({ measure }) => measure.key)).toEqual(['scrap_rate']);
    // 15 runs with 1 of 2 and 15 with 10 of 100: 165 of 1530 in all, and 30 % in the mean of runs.
    const [base, other] = found[0]!.rows;
    expect([base!.mean, base!.overAll]).toEqual(['25', '25']);
    expect([Number(other!.mean), Number(other!.overAll)]).toEqual([30, 11]);
    const same = skewed.filter(({ policy }) => policy === 'base');
    expect(overAllCells(spreadOf(['base'], same), compare(['base'], same))).toEqual([]);
  });
});

describe('a doubtful interval', () => {
  const found = { comparison: compare(SKEWED, skewed), spread: spreadOf(SKEWED, skewed), targets: [] };
  it('is told once at the terminal, by measure and policy', () => {
    const text = comparisonText(found.comparison, PLAIN, undefined, undefined, { spread: found.spread });
    expect(flat(text)).toContain(
      'Skewed runs, and too few for it, so that intervals may miss more often than they say: ' +
        "throughput (mean of <a>; difference of <a>). Cochran's rule asks for 178 runs.",
    );
    expect(text.match(/Cochran/g)).toHaveLength(1);
  });

  it('warns once beside the verdict, and says more below the table of its measure alone', () => {
    const drawn = page(found);
    const warnings = [...drawn.querySelectorAll('.warning')].filter(({ textContent }) =>
      textContent.includes('Cochran'),
    );
    expect(warnings.map(({ parentElement }) => parentElement!.parentElement!.id)).toEqual(['verdict']);
    expect(warnings[0]!.textContent).toContain('throughput');
    const notes = [...drawn.querySelectorAll('#measures .note')].filter(({ textContent }) =>
      textContent.includes('Cochran'),
    );
    expect(notes).toHaveLength(1);
    expect(notes[0]!.parentElement!.textContent).toContain('throughput');
    const { tables } = paperOf(found.comparison, undefined, {
      title: 'T',
      origin: ORIGIN,
      spread: found.spread,
    });
    expect(tables.filter(({ notes }) => notes.join().includes('Cochran')).map(({ key }) => key)).toEqual([
      'throughput_per_h',
    ]);
  });

  it('is marked in the data, with how many runs it takes', () => {
    const source = {
      outcomes: skewed,
      version: '0',
      command: ['compare', 'a.yaml'],
      scenario: { file: 'a', title: 'A', sha256: 'b' },
    };
    const document = comparisonJson({ ...source, ...found });
    const [base, other] = document.spread!.measures[0]!.rows;
    expect(other!.difference_skewness).toMatchObject({ runs_wanted: 178, doubtful: true });
    expect(base).toMatchObject({ mean_skewness: { value: 0, doubtful: false }, difference_skewness: null });
    expect(document.measures[0]!.rows[1]).toMatchObject({ level: 0.95, method: 't' });
    expect(document.measures[0]!.rows[1]!.difference_method).toBe('t, Bonferroni for 2');
  });
});

describe('targets', () => {
  it('stand after the verdict at the terminal, in 80 columns, with a row for each policy', () => {
    const text = comparisonText(comparison, PLAIN, undefined, undefined, { spread, targets });
    for (const line of text.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(80);
    expect(text).toContain('runs with throughput at least 42.5 good /h');
    expect(text).toContain('runs with scrap rate at most 5 %');
    const met = outcomes.filter(
      ({ policy, measures }) => policy === policies[0] && measures.throughput_per_h! >= 42.5,
    ).length;
    expect(text).toContain(`${met} of 30`);
  });

  it('have a section of the page, and tables of a paper, when asked for alone', () => {
    const section = page().querySelector('#targets')!;
    expect(section.querySelectorAll('table')).toHaveLength(2);
    expect(section.textContent).toContain('Wilson');
    expect(page({ targets: [] }).querySelector('#targets')).toBeNull();
    const paper = paperOf(comparison, undefined, { title: 'T', origin: ORIGIN, targets });
    expect(paper.tables.slice(0, 2).map(({ key }) => key)).toEqual(['target-1', 'target-2']);
  });
});

describe('one policy by itself', () => {
  it('tells its spread below its means, in 80 columns, and not of one run', () => {
    const own = outcomes.filter(({ policy }) => policy === policies[0]);
    const text = (of: readonly Outcome[]) =>
      singleText(compare([policies[0]!], of), PLAIN, [], {}, spreadOf([policies[0]!], of));
    for (const line of text(own).split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(80);
    expect(text(own)).toContain('how the runs lie: ');
    expect(text(own.slice(0, 1))).not.toContain('how the runs lie');
  });
});
