import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { selectionCharts } from '../../../src/report/selection/selection-charts.ts';
import { selectionPage } from '../../../src/report/selection/selection-page.ts';
import { POLICIES, sampleSelection } from './sample.ts';

const PROVENANCE = {
  ...{ file: 'cell.yaml', title: 'A <cell>', sha256: 'abc', version: '1', joined: [] },
  ...{ command: 'mendline compare cell.yaml --until-decided', modules: [{ path: 'own.ts', sha256: 'def' }] },
};
const KINDS = [{}, { procedure: 'two-stage' }, { most: 6, worth: 0.3 }] as const;
const pageOf = (changed: Parameters<typeof sampleSelection>[0]) =>
  selectionPage(sampleSelection(changed), PROVENANCE);

describe('the page of a choice', () => {
  it('has a row a policy, and a chart and a sentence of each that was left out', () => {
    const { document } = parseHTML(pageOf({}));
    const texts = (selector: string) =>
      ([...document.querySelectorAll(selector)] as { textContent: string }[]).map(
        ({ textContent }) => textContent,
      );
    expect(texts('#policies tbody th')).toEqual(POLICIES);
    expect(texts('#policies td.word')).toEqual(['left out', 'chosen', 'left out']);
    expect(texts('#course figure')).toHaveLength(2);
    expect(texts('#course li')).toHaveLength(2);
    const label = document.querySelector('#course figure svg')!.getAttribute('aria-label')!;
    expect(label).toMatch(
      /ahead of .* in throughput, good \/h, by number of runs: [\d.]+ after \d+, where [\d.]+ is the most/,
    );
  });

  it.each(KINDS)('escapes names, runs nothing and gives the same bytes again, with %j', (changed) => {
    const page = pageOf(changed);
    for (const name of ['<on>', '<cell>']) expect(page).not.toContain(name);
    expect(page).not.toMatch(/<script|NaN|undefined|\bnull\b|Infinity/);
    expect(pageOf(changed)).toBe(page);
    const { document } = parseHTML(page);
    const ids = ([...document.querySelectorAll('[id]')] as { id: string }[]).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('draws what ended with the first stage, and what never differed', () => {
    for (const made of [sampleSelection({}, [20, 90, 22]), sampleSelection({}, [20, 20, 20], 0)])
      for (const { svg } of selectionCharts(made)) expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });
});
