import { LEVEL } from '../../experiment/comparison.ts';
import type { Varied } from '../../experiment/varied/varied.ts';
import { percentLevel } from '../cells.ts';
import { lookOf } from '../crossed/crossed-charts.ts';
import { escapeHtml } from '../escape.ts';
import { heading, scrolling, section } from '../html.ts';
import { framed, originList, type TitledOrigins } from '../page-frame.ts';
import { type Chart, drawnMeans, variedCharts } from './varied-charts.ts';
import {
  byGoodness,
  effectColumns,
  meanColumns,
  pointColumns,
  screenedColumns,
  type TextColumn,
} from './varied-tables.ts';
import { bestText, effectsHeading, factorText, measureOf, variedNotes } from './varied-words.ts';

/** Rows of settings on the page; vary.csv has them all. */
const MOST_SHOWN = 200;

const note = (text: string) => `<p class="note">${escapeHtml(text)}</p>`;

function table(id: string, caption: string, columns: readonly TextColumn[]): string {
  const kind = ({ side }: TextColumn, i: number) => (side === 'left' && i > 0 ? 'word' : '');
  const rows = columns[0]!.cells.map((first, row) => {
    const cells = columns.slice(1).map((column, i) => {
      const of = kind(column, i + 1);
      return `<td${of && ` class="${of}"`}>${escapeHtml(column.cells[row]!)}</td>`;
    });
    return `<tr><th scope="row">${escapeHtml(first)}</th>${cells.join('')}</tr>`;
  });
  const heads = columns.map((column, i) => heading(column.heading, kind(column, i)));
  return scrolling(id, escapeHtml(caption), heads.join(''), rows);
}

function effectsTable(varied: Varied): string {
  const { effects } = varied;
  if (effects.kind === 'none') return '';
  const columns =
    effects.kind === 'screened' ? screenedColumns(varied, effects.rows) : effectColumns(varied, effects.rows);
  return table('table-effects', effectsHeading(varied), columns);
}

function legendOf({ lines }: Chart): string {
  if (lines.length === 0) return '';
  const items = lines.map((words, i) => {
    const { colour, dashes } = lookOf(i);
    const line = `<line x1="0" y1="6" x2="36" y2="6" stroke="${colour}" stroke-width="2.2" stroke-dasharray="${dashes}"/>`;
    return `<li><svg width="36" height="12" aria-hidden="true" style="display:inline-block;margin-right:0.45rem">${line}</svg>${escapeHtml(words)}</li>`;
  });
  return `<ul class="legend" aria-label="Lines">${items.join('')}</ul>`;
}

const KEYS: Readonly<Record<Varied['design']['kind'], string>> = {
  all: 'Dot: the mean over all settings that have this value',
  fraction: 'Dot: the mean over all settings that have this value',
  latin: 'Dot: the mean of a setting, where its value is',
  screen:
    'To the right: a larger effect. Above: one that differs from place to place. Empty: not told from luck.',
};

function tableOfMeans(varied: Varied): string {
  const means = drawnMeans(varied);
  if (means.length === 0) return '';
  const caption = `${measureOf(varied)}, by value`;
  return `
<details>
<summary>The same as a table</summary>
${table('table-means', caption, meanColumns(varied, means))}
</details>`;
}

function figures(varied: Varied, charts: readonly Chart[]): string {
  const panels = charts.map(
    (chart) =>
      `<figure><figcaption>${escapeHtml(chart.name)} <span>(${escapeHtml(measureOf(varied))})</span></figcaption>${chart.svg}${legendOf(chart)}</figure>`,
  );
  const { kind } = varied.design;
  const bars =
    kind === 'screen'
      ? ''
      : varied.seeds > 1
        ? `; bar: its ${percentLevel(LEVEL)} % interval, by itself. Whether two bars overlap decides nothing, for settings share their seeds: the effects above do.`
        : '.';
  return `${note(KEYS[kind] + bars)}
<div class="panels">
${panels.join('\n')}
</div>${tableOfMeans(varied)}`;
}

function settings(varied: Varied): string {
  const all = varied.design.points.length;
  const screening = varied.design.kind === 'screen';
  const shown = (
    screening || all <= MOST_SHOWN ? varied.estimates.map((_, i) => i) : byGoodness(varied)
  ).slice(0, MOST_SHOWN);
  const which =
    shown.length === all
      ? 'each setting'
      : `${screening ? 'the first' : 'the best'} ${MOST_SHOWN} of ${all} settings`;
  const caption = `${measureOf(varied)}, ${which} (${varied.measure.better} is better): ${varied.measure.meaning}`;
  return table('table-settings', caption, pointColumns(varied, shown));
}

/** One file with everything in it: no scripts, nothing fetched. The same experiment gives the same bytes. */
export function variedPage(varied: Varied, provenance: TitledOrigins): string {
  const { title } = provenance;
  const what = varied.factors.map((factor) => `<li>${escapeHtml(factorText(factor))}</li>`);
  const effects = [
    `<ul>\n${what.join('\n')}\n</ul>`,
    effectsTable(varied),
    ...variedNotes(varied).map(note),
    ...(varied.design.kind === 'screen' ? [] : [`<p>${escapeHtml(bestText(varied))}</p>`]),
  ];
  const charts = variedCharts(varied);
  const runs = varied.design.kind === 'screen' ? varied.runs / varied.design.perPath : varied.seeds;
  const seeds = runs === 1 ? '1' : `1 to ${runs}`;
  const sections = [
    section('effects', 'What it does', effects.join('\n')),
    ...(charts.length > 0 ? [section('charts', 'The response', figures(varied, charts))] : []),
    section('settings', 'Settings', settings(varied)),
    section('origin', 'Provenance', originList({ ...provenance, seeds })),
  ];
  return framed({
    ...{ name: `${title}: varied`, title, kind: 'varied experiment: other values, and what they do' },
    skip: { id: 'effects', text: 'Skip to the effects' },
    sections: sections.join('\n'),
  });
}
