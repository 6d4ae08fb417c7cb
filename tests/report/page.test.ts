import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { comparisonPage } from '../../src/report/page.ts';
import { VERDICT_TERMS } from '../../src/report/verdict-terms.ts';
import { outcome, shares } from './fake.ts';
import { sampleOutcomes, samplePage } from './sample.ts';

const NAMESPACE = /http:\/\/www\.w3\.org\/(2000\/svg|1999\/xlink)/g;

describe('comparisonPage', () => {
  const page = comparisonPage(samplePage());

  it('escapes what a scenario may hold', () => {
    const nasty = '<script>alert(1)</script>';
    const outcomes = [nasty, 'b"\'&'].flatMap((name) =>
      [1, 2, 3].map((seed) => ({
        ...outcome(name, seed, { fit_rate: seed / 10 }),
        stateShares: { [nasty]: shares({ working: 1 }) },
      })),
    );
    const source = samplePage(nasty);
    const made = comparisonPage({
      ...source,
      comparison: compare([nasty, 'b"\'&'], outcomes),
      about: nasty,
      scenarioText: nasty,
      provenance: { file: nasty, sha256: nasty, version: nasty, command: nasty, seeds: nasty },
      warnings: [nasty],
    });
    expect(made).not.toContain('<script');
    expect(made).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(parseHTML(made).document.querySelectorAll('script')).toHaveLength(0);
  });

  it('fetches nothing and runs nothing', () => {
    expect(page.replace(NAMESPACE, '')).not.toMatch(
      /https?:\/\/|\ssrc=|@import|url\(|<link|<script|\son[a-z]+=/i,
    );
  });

  it('opens with the verdict, one table of everything and the intervals, and links to every part', () => {
    const { document } = parseHTML(page);
    const ids = [...document.querySelectorAll('main > section')].map((part) => part.id);
    expect(ids.slice(0, 3)).toEqual(['verdict', 'glance', 'intervals']);
    expect(ids.slice(-2)).toEqual(['text', 'origin']);
    const links = [...document.querySelectorAll('nav a')].map((link) => link.getAttribute('href'));
    expect(links).toEqual(ids.map((id) => `#${id}`));
  });

  it('gives at a glance the means and verdicts of the tables of measures', () => {
    const { document } = parseHTML(page);
    const { policies, measures } = samplePage().comparison;
    const rows = [...document.querySelectorAll('#glance tbody tr')];
    expect(rows.map((row) => row.querySelector('th').textContent)).toEqual(policies);
    for (const [m, { measure }] of measures.entries()) {
      const table = document.querySelector(`#table-${measure.key}`)!.closest('table')!;
      for (const [p, row] of [...table.querySelectorAll('tbody tr')].entries()) {
        const [verdict, , , mean] = [...row.querySelectorAll('td')].map((cell) => cell.textContent);
        const [told, word] = rows[p].querySelectorAll('td')[m].innerHTML.split('<br>');
        expect(told.split('&#160;')[0]).toBe(mean);
        expect(verdict.startsWith(word.replace(/<[^>]*>/g, ''))).toBe(true);
      }
    }
  });

  it('gives the same bytes again', () => {
    expect(comparisonPage(samplePage())).toBe(page);
  });

  it.each([0, 1])('draws no scale below 0 or above 100 percent where every run gave a rate of %d', (rate) => {
    const policies = ['a', 'b'];
    const outcomes = policies.flatMap((name) =>
      [1, 2, 3].map((seed) => outcome(name, seed, { scrap_rate: rate })),
    );
    const made = comparisonPage({ ...samplePage(), comparison: compare(policies, outcomes) });
    const chart = parseHTML(made).document.querySelector('#intervals figure > svg')!;
    const ticks = (
      [...chart.querySelectorAll('[aria-label="x-axis tick label"] text')] as { textContent: string }[]
    ).map((text) => Number(text.textContent.replace('\u2212', '-')));
    expect(ticks.length).toBeGreaterThan(1);
    expect(Math.min(...ticks)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...ticks)).toBeLessThanOrEqual(100);
  });

  it('names every chart and gives every id once', () => {
    const { document } = parseHTML(page);
    const charts = [...document.querySelectorAll('figure > svg')] as {
      getAttribute(name: string): string | null;
    }[];
    const { measures, policies } = samplePage().comparison;
    expect(charts).toHaveLength(measures.length + policies.length);
    for (const chart of charts) {
      expect(chart.getAttribute('role')).toBe('img');
      expect(chart.getAttribute('aria-label')).toBeTruthy();
      expect(chart.getAttribute('viewBox')).toBeTruthy();
    }
    const ids = ([...document.querySelectorAll('[id]')] as { id: string }[]).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('shows the states that occur by their words, and no others', () => {
    const made = comparisonPage({
      ...samplePage(),
      comparison: compare(
        ['a'],
        [
          {
            ...outcome('a', 1, { fit_rate: 0.5 }),
            stateShares: { press: shares({ working: 0.5, awaiting_technician: 0.5 }) },
          },
        ],
      ),
    });
    const { document } = parseHTML(made);
    const legend = [...document.querySelectorAll('.legend li')] as { textContent: string }[];
    expect(legend.map(({ textContent }) => textContent)).toEqual(['wworking', 'tno technician']);
    expect(document.querySelector('#states svg')!.getAttribute('aria-label')).toContain(
      'press working 50.0 %, no technician 50.0 %.',
    );
    for (const word of ['awaiting', 'off shift', 'starved', 'set-up']) expect(made).not.toContain(word);
  });

  it('tells how busy the crews were, where there are any', () => {
    const runs = [0.2, 0.4].map((busy, i) => ({
      ...outcome('a', i + 1, { fit_rate: 0.5 }),
      crewBusyShares: { 'a <fitter>': busy },
    }));
    const { document } = parseHTML(comparisonPage({ ...samplePage(), comparison: compare(['a'], runs) }));
    const cells = [...document.querySelectorAll('#crews th, #crews td')] as { textContent: string }[];
    expect(cells.map(({ textContent }) => textContent)).toEqual(['policy', 'a <fitter>', 'a', '30.0']);
    expect(page).not.toContain('id="crews"');
  });

  it('leaves out a measure that no run gives', () => {
    const { document } = parseHTML(
      comparisonPage({
        ...samplePage(),
        comparison: compare(
          ['a', 'b'],
          [outcome('a', 1, { fit_rate: 0.5 }), outcome('b', 1, { fit_rate: 0.6 })],
        ),
      }),
    );
    expect(document.querySelectorAll('#intervals figure')).toHaveLength(1);
    expect(document.querySelectorAll('#measures table')).toHaveLength(1);
    expect(document.querySelector('#reading')!.textContent).not.toContain('finished goods');
  });

  it('puts the verdict first and the caution in', () => {
    expect(page.indexOf('id="verdict"')).toBeLessThan(page.indexOf('id="about"'));
    expect(page).toContain('it is no substitute for risk assessment, local codes and competent people');
  });

  it('tells who may be best by measure, and every pair in a fold', () => {
    const { document } = parseHTML(page);
    const { measures } = samplePage().comparison;
    const cells = (selector: string) =>
      ([...document.querySelectorAll(selector)] as { textContent: string }[]).map(
        ({ textContent }) => textContent,
      );
    expect(cells('#best table:has(#table-best) tbody th')).toEqual(
      measures.map(({ measure }) => measure.name),
    );
    expect(cells('#best details table')).toHaveLength(measures.length);
    expect(cells('#pairs details table')).toHaveLength(measures.length);
    // Six pairs of four policies.
    expect(cells('#pairs details table:first-of-type tbody tr').length % 6).toBe(0);
    expect(cells('#reading dt')).toEqual(expect.arrayContaining(VERDICT_TERMS.map(([term]) => term)));
  });

  it('has no best and no pairs where the verdict says it all', () => {
    const outcomes = samplePage().comparison.policies.slice(0, 2);
    const made = comparisonPage({
      ...samplePage(),
      comparison: compare(
        outcomes,
        sampleOutcomes().filter(({ policy }) => outcomes.includes(policy)),
      ),
    });
    expect(made).not.toContain('id="best"');
    expect(made).not.toContain('id="pairs"');
  });

  it('serves one policy under one seed', () => {
    const made = comparisonPage({
      ...samplePage(),
      comparison: compare(['a'], [outcome('a', 1, { fit_rate: 0.5 })]),
    });
    expect(made).toContain('There is nothing to compare');
    expect(made).not.toContain('difference to');
    expect(made).not.toContain('NaN');
  });
});
