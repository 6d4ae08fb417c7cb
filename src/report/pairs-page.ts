import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import { headingOf, percentLevel } from './cells.ts';
import { escapeHtml } from './escape.ts';
import { heading, scrolling, section, verdictCell } from './html.ts';
import { PAIR_HEADINGS, pairCells, pairsNote } from './pair-cells.ts';

function pairTable(compared: MeasureComparison): string {
  const rows = pairCells(compared).map(
    ({ policy, other, difference, interval, chance, verdict, whole }) =>
      `<tr><th scope="row">${escapeHtml(policy)}</th><td class="word names">${escapeHtml(other)}</td>` +
      `${verdictCell(verdict, whole)}<td>${difference}</td><td>${interval}</td>` +
      `<td>${escapeHtml(chance)}</td></tr>`,
  );
  const [policy, against, ...numbers] = PAIR_HEADINGS.slice(0, -1);
  const head =
    heading(policy!) +
    heading(against!, 'word') +
    heading('verdict', 'word') +
    numbers.map((name) => heading(name)).join('');
  return scrolling(`pairs-${compared.measure.key}`, escapeHtml(headingOf(compared)), head, rows);
}

/** Every pair of policies, folded; empty where the verdict tells of the only one. */
export function pairsSection(comparison: Comparison): string {
  const { measures, pairComparisons } = comparison;
  if (!measures.some(({ pairs }) => pairs.length > 1)) return '';
  const note = escapeHtml(pairsNote(pairComparisons, percentLevel(LEVEL)));
  const tables = measures.map(pairTable).join('\n');
  const body = `<p class="note">${note}</p>
<details>
<summary>All pairs, measure by measure</summary>
${tables}
</details>`;
  return section('pairs', 'Every pair', body);
}
