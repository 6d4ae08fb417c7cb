import type { Comparison } from '../experiment/comparison.ts';
import { escapeHtml } from './escape.ts';
import { percent } from './format.ts';
import { heading, scrolling, section } from './html.ts';

/** How busy the crews were; empty where the line has none. */
export function crewSection({ policies, crewShares }: Comparison): string {
  const crews = Object.keys(crewShares[policies[0]!]!);
  if (crews.length === 0) return '';
  const rows = policies.map(
    (policy) =>
      `<tr><th scope="row">${escapeHtml(policy)}</th>` +
      `${crews.map((crew) => `<td>${percent(crewShares[policy]![crew]!)}</td>`).join('')}</tr>`,
  );
  const head = heading('policy') + crews.map((crew) => heading(crew)).join('');
  const caption =
    'Busy <span>(mean share of the counted time that a member of the crew was at work or on the way to it, %; ' +
    'the hours off shift count as time, too)</span>';
  return section('crews', 'What the crews did', scrolling('table-crews', caption, head, rows));
}
