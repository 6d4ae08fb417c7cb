import { LEVEL } from '../experiment/comparison.ts';
import type { Recovered } from '../experiment/recovered.ts';
import { percentLevel } from './cells.ts';
import { escapeHtml } from './escape.ts';
import { heading, scrolling, section } from './html.ts';
import { RECOVERED_HEADING, recoveredNotes, recoveredRows } from './recovered-cells.ts';

/** How much of the recoverable loss each policy recovered. */
export function recoveredSection(recovered: Recovered): string {
  const rows = recoveredRows(recovered).map(
    ({ policy, share, interval }) =>
      `<tr><th scope="row">${escapeHtml(policy)}</th><td>${share}</td><td>${interval}</td></tr>`,
  );
  const head =
    heading('policy') + heading('share recovered, %') + heading(`${percentLevel(LEVEL)}\u00a0% interval`);
  const caption =
    'Share of the recoverable loss recovered <span>(by throughput, against the baseline and the bound, %)</span>';
  const notes = recoveredNotes(recovered).map((text) => `<p class="note">${escapeHtml(text)}</p>`);
  const table = rows.length > 0 ? [scrolling('table-recovered', caption, head, rows)] : [];
  const name = `${RECOVERED_HEADING[0]!.toUpperCase()}${RECOVERED_HEADING.slice(1)}`;
  return section('recovered', name, [...table, ...notes].join('\n'));
}
