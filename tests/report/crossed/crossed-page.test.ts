import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { crossedCharts, lookOf } from '../../../src/report/crossed/crossed-charts.ts';
import { crossedPage } from '../../../src/report/crossed/crossed-page.ts';
import { contrast } from '../colour-sight.ts';
import { CASES, POLICIES, SEVERITIES, sampleCrossed } from './sample.ts';

const PROVENANCE = {
  ...{
    file: 'cell.yaml',
    title: 'A <cell>',
    sha256: 'abc',
    version: '1',
    command: 'mendline cross cell.yaml',
  },
  joined: [],
  modules: [{ path: 'own.ts', sha256: 'def' }],
};
const found = sampleCrossed(8);
const page = crossedPage(found, PROVENANCE);
const { document } = parseHTML(page);
const texts = (selector: string) =>
  ([...document.querySelectorAll(selector)] as { textContent: string }[]).map(
    ({ textContent }) => textContent,
  );

describe('the page of a crossed experiment', () => {
  it('has a row and a chart a case, and the same as tables of a row a policy', () => {
    expect(texts('#best tbody th')).toEqual(CASES);
    expect(texts('#best thead th')).toEqual([
      'case',
      ...SEVERITIES.map((severity) => `severity ${severity}`),
    ]);
    expect(texts('#charts figcaption')).toEqual(CASES.map((name) => `${name} (throughput, good /h)`));
    expect(texts('#charts details .scroll')).toHaveLength(CASES.length);
    expect(texts('#charts details .scroll:first-of-type tbody th')).toEqual(POLICIES);
    expect(texts('#charts .legend li')).toEqual(POLICIES);
    const ids = ([...document.querySelectorAll('[id]')] as { id: string }[]).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('escapes names, runs nothing, and gives the same bytes again', () => {
    for (const name of ['<stop>', '<forming>', '<cell>']) expect(page).not.toContain(name);
    expect(page).not.toMatch(/<script|NaN|undefined|\bnull\b|Infinity/);
    expect(crossedPage(sampleCrossed(8), PROVENANCE)).toBe(page);
  });

  it('tells in words what a chart shows', () => {
    const label = document.querySelector('#charts figure svg')!.getAttribute('aria-label')!;
    expect(label).toContain(`throughput, good /h in case ${CASES[0]}. Best: up to 0.4`);
  });
});

describe('the charts', () => {
  it('stay whole with one run, and without any value', () => {
    const empty = sampleCrossed(2, 'fit_rate').found.map((one) => ({
      ...one,
      cells: one.cells.map((cell) => ({
        ...cell,
        best: null,
        standings: cell.standings.map((standing) => ({ ...standing, estimate: null })),
      })),
    }));
    for (const made of [sampleCrossed(1), { ...found, found: empty }])
      for (const { svg } of crossedCharts(made)) expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('draw lines that can be seen on the paper, each of a look of its own', () => {
    const looks = Array.from({ length: 20 }, (_, i) => lookOf(i));
    for (const { colour } of looks) expect(contrast(colour, '#fdfcf9')).toBeGreaterThan(4.5);
    expect(new Set(looks.map(({ colour, dashes }) => `${colour} ${dashes}`)).size).toBe(20);
  });
});
