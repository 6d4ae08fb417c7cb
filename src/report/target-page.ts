import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import type { TargetFound } from '../experiment/targets.ts';
import { percentLevel } from './cells.ts';
import { escapeHtml } from './escape.ts';
import { heading, scrolling, section } from './html.ts';
import { targetCells, targetNote } from './target-cells.ts';

const note = (text: string) => `<p class="note">${escapeHtml(text)}</p>`;

/** How often each policy met what the command asked for. */
export function targetSection(targets: readonly TargetFound[], { policies }: Comparison): string {
  const head = ['policy', 'share, %', `${percentLevel(LEVEL)}\u00a0% interval`, 'runs that met it']
    .map((text) => heading(text))
    .join('');
  const tables = targetCells(targets, policies).map(({ key, name, rows, notes }) => {
    const body = rows.map(
      ({ policy, met, share, interval }) =>
        `<tr><th scope="row">${escapeHtml(policy)}</th><td>${share}</td><td>${interval}</td><td>${met}</td></tr>`,
    );
    const table = scrolling(`table-${key}`, escapeHtml(name), head, body);
    return `<div class="measure">${[table, ...notes.map(note)].join('\n')}</div>`;
  });
  return section('targets', 'How often targets were met', [...tables, note(targetNote(targets))].join('\n'));
}
