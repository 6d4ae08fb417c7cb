import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { TWIN_MEASURES } from '../../src/experiment/twin-measures.ts';
import { widthOf } from '../../src/report/columns.ts';
import { comparisonPage } from '../../src/report/page.ts';
import { comparisonText } from '../../src/report/terminal.ts';
import { TWINS_HEADING, twinColumns, twinNotes } from '../../src/report/twin-cells.ts';
import { TWIN_COLOUR, timeUnit, twinCharts } from '../../src/report/twin-charts.ts';
import { twinsCsv } from '../../src/report/twins-csv.ts';
import { twinsJson } from '../../src/report/twins-json.ts';
import { contrast, difference, KINDS, seen } from './colour-sight.ts';
import { outcome } from './fake.ts';
import { samplePage } from './sample.ts';
import { POLICIES, STOP, sampleTwins } from './twins-sample.ts';

const twins = sampleTwins(5);
const alone = sampleTwins(1);
/** A run that ends while the line may stand still. */
const cut = sampleTwins(5, '160 min');
const comparison = compare(
  POLICIES,
  POLICIES.flatMap((name) => [1, 2].map((seed) => outcome(name, seed, { fit_rate: 0.5 }))),
);
const PLAIN = { title: 'T', colour: false, width: 80 };
const flat = (text: string) => text.replace(/\s+/g, ' ');

describe('the text', () => {
  it('tells the cost after the verdict, in 80 columns, each mean with its interval', () => {
    const text = comparisonText(comparison, PLAIN, twins);
    for (const line of text.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(80);
    expect(text.indexOf(TWINS_HEADING)).toBeGreaterThan(text.indexOf(`against ${POLICIES[0]}`));
    expect(text.indexOf(TWINS_HEADING)).toBeLessThan(text.indexOf('fit rate, %'));
    const { mean, interval } = twinColumns(twins, POLICIES).find(({ name }) => name === 'output lost')!
      .cells[0]!;
    expect(text).toContain(`${mean} (${interval})`);
    expect(comparisonText(comparison, PLAIN)).not.toContain(TWINS_HEADING);
  });

  it('leaves out what no run gives, and what is never there', () => {
    const names = twinColumns(twins, POLICIES).map(({ name }) => name);
    expect(names).toEqual(
      ['undisturbed', 'output lost', 'depth', 'time to recover', 'lasting loss', 'resilience', 'scrap caused'], // biome-ignore format: one line reads better
    );
  });

  it('says that one run gives no interval', () => {
    const text = flat(comparisonText(comparison, PLAIN, alone));
    expect(text).toContain('One run of each policy gives no interval.');
    expect(text).not.toContain('null');
    expect(twinColumns(alone, POLICIES)[0]!.cells[0]!.interval).toBe('');
  });

  it('counts the runs that had not recovered, which the mean leaves out', () => {
    const number = cut.runs.filter(
      ({ policy, values }) => policy === POLICIES[0] && values.time_to_recover_s === null,
    );
    expect(number.length).toBeGreaterThan(0);
    expect(twinNotes(cut, POLICIES).join(' ')).toContain(
      `Of 5 runs, these still fell short at the end: ${POLICIES[0]} ${number.length} and `,
    );
    const recovered = {
      ...twins,
      runs: twins.runs.map((run) => ({ ...run, values: { ...run.values, time_to_recover_s: 60 } })),
    };
    expect(twinNotes(recovered, POLICIES).join(' ')).not.toContain('fell short at the end');
  });

  it('says how many disturbances were answered, where any were', () => {
    expect(twinNotes(twins, POLICIES).join(' ')).not.toContain('answered');
    const answered = {
      ...twins,
      runs: twins.runs.map((run) => ({ ...run, answered: run.seed === 2 ? 1 : 0 })),
    };
    expect(twinNotes(answered, POLICIES).join(' ')).toContain(
      `${POLICIES[0]} 1 of 5 and ${POLICIES[1]} 1 of 5.`,
    );
  });
});

describe('the page', () => {
  const page = comparisonPage({ ...samplePage(), comparison, twins });
  const { document } = parseHTML(page);

  it('has tables of a row a policy, a chart a policy and the same as tables', () => {
    const texts = (selector: string) =>
      ([...document.querySelectorAll(selector)] as { textContent: string }[]).map(
        ({ textContent }) => textContent,
      );
    // Nine measures, or eight, in two tables that each fit.
    expect(texts('#twins > div > .scroll tbody th')).toEqual([...POLICIES, ...POLICIES]);
    for (const table of document.querySelectorAll('#twins > div > .scroll'))
      expect(table.querySelectorAll('thead th').length).toBeLessThanOrEqual(6);
    expect(texts('#twins figure figcaption')).toEqual(
      POLICIES.map((name) => `${name} (rolling rate, good /h)`),
    );
    // One row a window of 10 min from the first whole one on.
    expect(texts('#twins details .scroll')).toHaveLength(2);
    expect(texts('#twins details .scroll:first-of-type tbody tr')).toHaveLength(30);
    for (const { meaning } of TWIN_MEASURES.slice(0, 2))
      expect(document.querySelector('#twins dl')!.textContent).toContain(meaning);
    const ids = ([...document.querySelectorAll('[id]')] as { id: string }[]).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('escapes names, runs nothing, gives the same bytes again, and has no section where no twins were run', () => {
    for (const name of ['<stop>', '<that>']) expect(page).not.toContain(name);
    expect(page).not.toMatch(/<script|NaN|undefined|\bnull\b/);
    expect(comparisonPage({ ...samplePage(), comparison, twins: sampleTwins(5) })).toBe(page);
    expect(comparisonPage({ ...samplePage(), comparison })).not.toContain('id="twins"');
  });

  it('tells in words what a chart shows', () => {
    const label = document.querySelector('#twins figure svg')!.getAttribute('aria-label')!;
    expect(label).toMatch(
      /^Rolling rate under carry on, good per hour: deepest below its twin at \d\.\d h, with \d+ against 3\d\d\./,
    );
    expect(label).toContain(`Disturbances: ${STOP} `);
  });
});

describe('the charts', () => {
  it('shade a disturbance from its mean beginning to its mean end, with its name', () => {
    const [curve] = twins.curves;
    expect(curve!.shades).toHaveLength(1);
    const [{ from, to }] = curve!.shades as unknown as [{ from: number; to: number }];
    expect(from).toBeGreaterThan(7200);
    expect(from).toBeLessThan(10_800);
    expect(to - from).toBeCloseTo(1800, 6);
    expect(twinCharts(twins)[0]!.svg).toContain('a &lt;stop&gt; &amp; "more"');
  });

  it('stay whole with one run, without output and without disturbances', () => {
    const nothing = { value: 0, lower: null, upper: null, level: 0.95, runs: 1, method: '' };
    const still = twins.curves.map((curve) => ({
      ...curve,
      shades: [],
      disturbed: curve.disturbed.map(() => nothing),
      twin: curve.twin.map(() => 0),
    }));
    for (const made of [alone, { ...twins, curves: still }])
      for (const { svg } of twinCharts(made)) expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('count in days where a run has many', () => {
    expect(timeUnit(16 * 3600)).toEqual({ unit: 'h', size: 3600 });
    expect(timeUnit(60 * 86_400)).toEqual({ unit: 'd', size: 86_400 });
  });

  // The ink and the paper of the page.
  it.each(KINDS)('draw the twin in a colour unlike the ink: %s', (kind) => {
    expect(difference(seen(TWIN_COLOUR, kind), seen('#1d2326', kind))).toBeGreaterThan(15);
    // WCAG 2.2, success criterion 1.4.11, asks for 3.
    expect(contrast(TWIN_COLOUR, '#fdfcf9')).toBeGreaterThanOrEqual(3);
  });
});

describe('the data', () => {
  it('of the JSON survive being written and read, with keys that name their units', () => {
    const made = twinsJson(twins);
    expect(JSON.parse(JSON.stringify(made))).toEqual(made);
    expect(made).toMatchObject({ rolling_s: 600, tolerance: { share: 0.1, parts: 1 } });
    expect(made.measures.map(({ key, unit }) => [key, unit])).toEqual([
      ['undisturbed_throughput_per_h', '1/h'],
      ['output_lost_parts', 'parts'],
      ['depth_per_h', '1/h'],
      ['time_to_recover_s', 's'],
      ['lasting_loss_parts', 'parts'],
      ['resilience', '1'],
      ['scrap_caused_parts', 'parts'],
      ['rework_caused_parts', 'parts'],
    ]);
    expect(made.curves[0]!.points.map(({ time_s }) => time_s)).toEqual(
      Array.from({ length: 30 }, (_, i) => 600 * (i + 1)),
    );
  });

  it('of the CSV have a row a policy and seed, empty where there is no value', () => {
    const [heading, ...rows] = twinsCsv(cut).trim().split('\r\n');
    expect(heading!.split(',')).toEqual([
      'policy',
      'seed',
      ...TWIN_MEASURES.map(({ key }) => key),
      'disturbed',
      'answered',
    ]);
    expect(rows).toHaveLength(10);
    const [first] = cut.runs;
    expect(rows[0]!.split(',').slice(0, 4)).toEqual([
      ...['carry on', '1'],
      ...[first!.values.undisturbed_throughput_per_h, first!.values.output_lost_parts].map(String),
    ]);
    const at = heading!.split(',').indexOf('time_to_recover_s');
    expect(rows.some((row) => row.split(',')[at] === '')).toBe(true);
  });
});
