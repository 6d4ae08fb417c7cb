import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import { BINS_A_WINDOW } from '../experiment/rolling.ts';
import type { Curve, Twins } from '../experiment/twins.ts';
import { percentLevel } from './cells.ts';
import { durationText } from './duration.ts';
import { escapeHtml } from './escape.ts';
import { fixed } from './format.ts';
import { heading, scrolling, section } from './html.ts';
import { TWINS_HEADING, type TwinColumn, twinColumns, twinNotes } from './twin-cells.ts';
import { timeUnit, twinCharts } from './twin-charts.ts';
import { twinStory } from './twin-story.ts';

const note = (text: string) => `<p class="note">${escapeHtml(text)}</p>`;

/** More columns than these fit neither a screen nor a sheet of paper. */
const WIDEST = 5;

/** The measures in as many tables as it takes for each to fit, of about the same width. */
function tables(twins: Twins, policies: readonly string[]): string[] {
  const columns = twinColumns(twins, policies);
  const number = Math.ceil(columns.length / WIDEST);
  const each = Math.ceil(columns.length / number);
  return Array.from({ length: number }, (_, i) =>
    table(columns.slice(i * each, (i + 1) * each), policies, i + 1),
  );
}

function table(columns: readonly TwinColumn[], policies: readonly string[], number: number): string {
  const rows = policies.map((policy, row) => {
    const cells = columns.map(({ cells }) => {
      const { mean, interval } = cells[row]!;
      return `<td>${mean}${interval && `<br><span class="note">${interval}</span>`}</td>`;
    });
    return `<tr><th scope="row">${escapeHtml(policy)}</th>${cells.join('')}</tr>`;
  });
  const head =
    heading('policy') +
    columns
      .map(({ name, unit }) => `<th scope="col">${escapeHtml(name)},<br>${escapeHtml(unit)}</th>`)
      .join('');
  const caption = `Cost of the disturbances <span>(mean, below it its ${percentLevel(LEVEL)} % interval)</span>`;
  return scrolling(`table-twins-${number}`, caption, head, rows);
}

function definitions(twins: Twins, policies: readonly string[]): string {
  const terms = twinColumns(twins, policies).map(
    ({ name, meaning, source }) =>
      `<dt>${escapeHtml(name)}</dt><dd>${escapeHtml(`${meaning}. Source: ${source}.`)}</dd>`,
  );
  return `<details>\n<summary>What these measures are</summary>\n<dl>${terms.join('\n')}</dl>\n</details>`;
}

function curveTable({ policy, times, disturbed, twin }: Curve, index: number): string {
  const { unit, size } = timeUnit(times.at(-1)!);
  const rows = times.flatMap((time, i) => {
    if (i % BINS_A_WINDOW !== 0) return [];
    const { value, lower, upper } = disturbed[i]!;
    const interval = lower === null || upper === null ? '' : `${fixed(lower, 0)} to ${fixed(upper, 0)}`;
    const cells = [fixed(value, 0), interval, fixed(twin[i]!, 0)].map((text) => `<td>${text}</td>`);
    return [`<tr><th scope="row">${fixed(time / size, 2)}</th>${cells.join('')}</tr>`];
  });
  const head = [`window ends, ${unit}`, 'disturbed', 'its interval', 'twin']
    .map((text) => heading(text))
    .join('');
  return scrolling(
    `curve-${index + 1}`,
    `${escapeHtml(policy)} <span>(rolling rate, good /h)</span>`,
    head,
    rows,
  );
}

function figures(twins: Twins): string {
  const panels = twinCharts(twins).map(
    ({ policy, svg }) =>
      `<figure><figcaption>${escapeHtml(policy)} <span>(rolling rate, good /h)</span></figcaption>${svg}</figure>`,
  );
  const key =
    `Solid line: good assemblies per hour over the ${durationText(twins.rolling.window)} before, mean over the seeds` +
    `${twins.seeds > 1 ? `, with its ${percentLevel(LEVEL)} % interval at each time by itself as a band` : ''}. ` +
    'Dashed line: the same without the disturbances. Shaded, with its name above: each disturbance from its mean ' +
    'beginning to its mean end; one that never ends ends with the run, and what did not come in every run is not ' +
    'shaded. A mean over seeds is shallower than the mean depth, since runs are at their lowest at different times.';
  return `${note(key)}
<div class="panels">
${panels.join('\n')}
</div>
<details>
<summary>The same as tables</summary>
${twins.curves.map(curveTable).join('\n')}
</details>`;
}

/** What the disturbances cost: the table, the definitions of its measures and the curves. */
export function twinsSection(twins: Twins, comparison: Comparison): string {
  const { policies } = comparison;
  const body = [
    `<div class="prose">${twinStory(twins, comparison)
      .map((text) => `<p>${escapeHtml(text)}</p>`)
      .join('\n')}</div>`,
    `<p>${escapeHtml(`${TWINS_HEADING[0]!.toUpperCase()}${TWINS_HEADING.slice(1)}.`)}</p>`,
    ...tables(twins, policies),
    ...twinNotes(twins, policies).map(note),
    definitions(twins, policies),
    figures(twins),
  ];
  return section('twins', 'What the disturbances cost', body.join('\n'));
}
