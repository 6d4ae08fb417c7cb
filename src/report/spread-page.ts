import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import type { MeasureSpread, Spread } from '../experiment/spread.ts';
import { percentLevel } from './cells.ts';
import { escapeHtml } from './escape.ts';
import { heading, scrolling, section } from './html.ts';
import { overAllCells, spreadCells, spreadNote } from './spread-cells.ts';
import { SPREAD_KEY, spreadChart } from './spread-chart.ts';

const SHARE = `${percentLevel(LEVEL)}\u00a0% interval`;
const note = (text: string) => `<p class="note">${escapeHtml(text)}</p>`;
const row = (name: string, cells: readonly string[]) =>
  `<tr><th scope="row">${escapeHtml(name)}</th>${cells.map((cell) => `<td>${cell}</td>`).join('')}</tr>`;
const headings = (names: readonly string[]) => names.map((name) => heading(name)).join('');

function spreadTable(found: MeasureSpread, policies: readonly string[]): string {
  const { key, name, shown, better } = found.measure;
  const rows = spreadCells(found, policies).map(({ policy, median, medianInterval, bad, badInterval }) =>
    row(policy, [bad, badInterval, median, medianInterval]),
  );
  const worse = better === 'higher' ? 'lower' : 'higher';
  const caption =
    `${escapeHtml(name)}, ${escapeHtml(shown.unit)} ` +
    `<span>(one run in ten is ${worse} than a bad run)</span>`;
  const head = headings(['policy', 'bad run', SHARE, 'median', SHARE]);
  return scrolling(`table-spread-${key}`, caption, head, rows);
}

function overAllTables(spread: Spread, comparison: Comparison): string[] {
  const tables = overAllCells(spread, comparison).map(({ measure: { key, name, shown, meaning }, rows }) =>
    scrolling(
      `table-over-all-${key}`,
      `${escapeHtml(name)}, ${escapeHtml(shown.unit)} <span>(${escapeHtml(meaning)})</span>`,
      headings(['policy', 'mean of runs', 'over all runs', SHARE]),
      rows.map(({ policy, mean, overAll, interval }) => row(policy, [mean, overAll, interval])),
    ),
  );
  if (tables.length === 0) return [];
  const why =
    'The mean of runs gives each run the same weight. Over all runs, what is above the line of the ratio is added up and ' +
    'divided by what is below it, so that runs with more parts count more. Where the two differ, runs with many parts ' +
    'did better or worse than runs with few. Ratios that come to the same are not repeated here.';
  return [
    `<details>\n<summary>Ratios over all runs together</summary>\n${[note(why), ...tables].join('\n')}\n</details>`,
  ];
}

function figure(found: MeasureSpread, comparison: Comparison): string {
  const { name, better } = found.measure;
  const caption = `${escapeHtml(name)} <span>(${better} is better)</span>`;
  const svg = spreadChart(found, comparison);
  return `<figure><figcaption>${caption}</figcaption>${svg}</figure>\n${note(SPREAD_KEY)}`;
}

/** How the runs lie: what half of them and what a tenth of them give, and ratios over all of them together. */
export function spreadSection(spread: Spread, comparison: Comparison): string {
  const { policies } = comparison;
  const [first, ...others] = spread.measures.map((found) => spreadTable(found, policies));
  // By one measure, the first, which is the output; tables tell of all.
  const [shown] = spread.measures;
  const body = [
    '<p>A mean says nothing of how bad a single run can turn out. Half of the runs lie below the median; one in ten is ' +
      'worse than a bad run.</p>',
    note(spreadNote(spread.seeds)),
    ...(shown === undefined ? [] : [figure(shown, comparison)]),
    ...(first === undefined ? [] : [first]),
    ...(others.length > 0
      ? [`<details>\n<summary>The other measures</summary>\n${others.join('\n')}\n</details>`]
      : []),
    ...overAllTables(spread, comparison),
  ];
  return section('spread', 'How bad a run can be', body.join('\n'));
}
