import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { sizedCsv } from '../../../src/report/sized/sized-csv.ts';
import { sizedJson } from '../../../src/report/sized/sized-json.ts';
import { sizedPage } from '../../../src/report/sized/sized-page.ts';
import { throughput } from '../../experiment/sizing/made-up.ts';
import { leadTime, sample } from './sample.ts';

const ORIGIN = {
  ...{
    file: 'line.yaml',
    title: 'A <line>',
    about: 'made & up',
    sha256: '0'.repeat(64),
    scenarioText: 'a: <b>',
  },
  ...{ joined: [], modules: [], version: '0.0.0', command: 'mendline size line.yaml' },
};

describe('a sizing as files', () => {
  it('is a row of CSV for each choice of sizes, by cost, one of them chosen', async () => {
    const found = await sample({ targets: [throughput(80, 2), leadTime] });
    const [head, ...rows] = sizedCsv(found)
      .trim()
      .split('\n')
      .map((line) => line.trim().split(','));
    expect(head).toEqual([
      ...['cost', 'a', 'b', 'c'],
      ...['mean_throughput_per_h', 'lower_throughput_per_h', 'upper_throughput_per_h'],
      ...['mean_lead_time_s', 'lower_lead_time_s', 'upper_lead_time_s'],
      ...['check', 'check_runs', 'cheapest_of_its_level', 'chosen'],
    ]);
    expect(rows).toHaveLength(found.configurations.length);
    const costs = rows.map(([cost]) => Number(cost));
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    const chosen = rows.filter((row) => row.at(-1) === 'yes');
    expect(chosen.map((row) => row.slice(0, 4).map(Number))).toEqual([
      [found.chosen!.cost, ...found.chosen!.values.map(Number)],
    ]);
  });

  it('is JSON with what was asked, what was said and all that was simulated', async () => {
    const found = await sample();
    const scenario = { file: 'line.yaml', title: 'A line', sha256: '0'.repeat(64) };
    const document = sizedJson({
      ...{
        sized: found,
        version: '0.0.0',
        command: ['size', 'line.yaml'],
        scenario,
        joined: [],
        modules: [],
      },
    });
    expect(document).toMatchObject({
      format: 'mendline sizing 1',
      command: ['size', 'line.yaml'],
      targets: [{ key: 'throughput_per_h', unit: '1/h', must_be: 'at least', value: 80, worth: 2 }],
      possible: 192,
      ended_early: false,
      chosen: { cost: found.chosen!.cost, check: 'meets' },
    });
    expect(document.configurations).toHaveLength(found.configurations.length);
    expect(JSON.parse(JSON.stringify(document))).toEqual(document);
  });

  it('is a page with the curve, a table beside it, and nothing from elsewhere', async () => {
    const found = await sample();
    const page = sizedPage(found, ORIGIN);
    const { document } = parseHTML(page);
    expect(document.querySelectorAll('script, link, img').length).toBe(0);
    const svg = document.querySelector('figure svg')!;
    expect(svg.getAttribute('aria-label')).toContain(
      'throughput against cost, target throughput at least 80',
    );
    expect(document.querySelectorAll('#table-curve, #table-steps, #table-means, #table-all').length).toBe(4);
    const rows = document.querySelector('#table-all')!.closest('.scroll')!.querySelectorAll('tbody tr');
    expect(rows.length).toBe(found.configurations.length);
    expect(page).toContain('A &lt;line&gt;');
    expect(page).toContain('a: &lt;b&gt;');
    expect(page).not.toMatch(/NaN|undefined|null/);
    // The same sizing gives the same bytes.
    expect(sizedPage(await sample(), ORIGIN)).toBe(page);
  });

  it('is a page, too, when nothing is known', async () => {
    const page = sizedPage(await sample({ settings: { atMost: 5 } }), ORIGIN);
    expect(page).toContain('so nothing is said');
    expect(page).not.toMatch(/NaN|undefined|null/);
  });

  it('does not say of a choice that nobody checked that it costs more, where there was no choice', async () => {
    const found = await sample({ settings: { atMost: 500 } });
    expect(found.chosen).toBeNull();
    expect(found.configurations.map(({ word }) => word)).toContain('not checked');
    expect(sizedPage(found, ORIGIN)).toContain('or the runs were over before');
  });
});
