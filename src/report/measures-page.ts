import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import type { Skew } from '../experiment/skew.ts';
import { type Cells, cellsOf, percentLevel } from './cells.ts';
import { escapeHtml } from './escape.ts';
import { heading, scrolling, section, verdictCell } from './html.ts';
import { notesOf } from './measure-notes.ts';
import { skewNotes } from './skew-text.ts';

/** Its space does not break at the end of a line. */
const SHARE = `${percentLevel(LEVEL)}\u00a0%`;

function measureCaption({ measure }: MeasureComparison): string {
  return (
    `${escapeHtml(measure.name)}, ${escapeHtml(measure.shown.unit)} ` +
    `<span>(${measure.better} is better): ${escapeHtml(measure.meaning)}</span>`
  );
}

function measureTable(compared: MeasureComparison, comparison: Comparison, skews: readonly Skew[]): string {
  const several = comparison.policies.length > 1;
  const plain = (cells: Cells) => [cells.mean, cells.interval];
  const paired = (cells: Cells) => [cells.difference, cells.differenceInterval];
  const rows = cellsOf(compared, comparison).map((cells) => {
    const numbers = several ? [...paired(cells), ...plain(cells)] : plain(cells);
    const row = numbers.map((text) => `<td>${escapeHtml(text)}</td>`).join('');
    // What decides stands first, so that a narrow screen shows it.
    const verdict = several ? verdictCell(cells.verdict, cells.whole) : '';
    return `<tr><th scope="row">${escapeHtml(cells.policy)}</th>${verdict}${row}</tr>`;
  });
  const head =
    heading('policy') +
    (several
      ? heading('verdict', 'word') + heading(`difference to ${comparison.baseline}`) + heading('its interval')
      : '') +
    heading('mean') +
    heading(`${SHARE} interval`);
  const doubts = skewNotes(skews, compared.measure.key);
  const notes = [...doubts, ...notesOf(compared, comparison)].map(
    (note) => `<p class="note">${escapeHtml(note)}</p>`,
  );
  const table = scrolling(`table-${compared.measure.key}`, measureCaption(compared), head, rows);
  return `<div class="measure">${[table, ...notes].join('\n')}</div>`;
}

/** Each measure by itself, with all that its intervals allow to be said. */
export function measuresSection(comparison: Comparison, skews: readonly Skew[] = []): string {
  const tables = comparison.measures.map((compared) => measureTable(compared, comparison, skews));
  return section('measures', 'Measures', tables.join('\n'));
}
