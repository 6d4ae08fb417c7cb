import { LEVEL } from '../../experiment/comparison.ts';
import type { Crossed, CrossedCase } from '../../experiment/crossed.ts';
import { percentLevel } from '../cells.ts';
import { escapeHtml } from '../escape.ts';
import { type Format, formatOf } from '../format.ts';
import { heading, scrolling, section } from '../html.ts';
import { framed, originList, type TitledOrigins } from '../page-frame.ts';
import { crossedCharts, lookOf } from './crossed-charts.ts';
import { bestOf, changesText, crossedNotes, measureOf } from './crossed-words.ts';

const note = (text: string) => `<p class="note">${escapeHtml(text)}</p>`;
const severityHeads = ({ severities }: Crossed) =>
  severities.map((severity) => heading(`severity ${severity}`)).join('');

function bestTable(crossed: Crossed): string {
  const rows = crossed.found.map(
    ({ name, cells }) =>
      `<tr><th scope="row">${escapeHtml(name)}</th>${cells.map((cell) => `<td>${escapeHtml(bestOf(cell))}</td>`).join('')}</tr>`,
  );
  const { measure } = crossed;
  const caption = `${escapeHtml(measureOf(crossed))} <span>(${measure.better} is better): ${escapeHtml(measure.meaning)}</span>`;
  return scrolling('table-best', caption, heading('case') + severityHeads(crossed), rows);
}

function meansTable({ name, cells }: CrossedCase, crossed: Crossed, index: number, format: Format): string {
  const rows = crossed.policies.map((policy, i) => {
    const means = cells.map(({ standings }) => {
      const { estimate } = standings[i]!;
      if (!estimate) return '<td>no value</td>';
      const interval =
        estimate.lower === null ? '' : `<br><span class="note">${format.interval(estimate)}</span>`;
      return `<td>${format.value(estimate.value)}${interval}</td>`;
    });
    return `<tr><th scope="row">${escapeHtml(policy)}</th>${means.join('')}</tr>`;
  });
  const caption = `${escapeHtml(name)} <span>(${escapeHtml(measureOf(crossed))})</span>`;
  return scrolling(`means-${index + 1}`, caption, heading('policy') + severityHeads(crossed), rows);
}

function figures(crossed: Crossed): string {
  const rows = crossed.found.flatMap(({ cells }) =>
    cells.flatMap(({ standings }) => standings.flatMap(({ estimate }) => (estimate ? [{ estimate }] : []))),
  );
  const format = formatOf({ measure: crossed.measure, rows });
  const legend = crossed.policies.map((policy, i) => {
    const { colour, dashes } = lookOf(i);
    const line = `<line x1="0" y1="6" x2="36" y2="6" stroke="${colour}" stroke-width="2.2" stroke-dasharray="${dashes}"/>`;
    return `<li><svg width="36" height="12" aria-hidden="true" style="display:inline-block;margin-right:0.45rem">${line}</svg>${escapeHtml(policy)}</li>`;
  });
  const panels = crossedCharts(crossed).map(
    ({ name, svg }) =>
      `<figure><figcaption>${escapeHtml(name)} <span>(${escapeHtml(measureOf(crossed))})</span></figcaption>${svg}</figure>`,
  );
  const band = crossed.seeds > 1 ? `, with its ${percentLevel(LEVEL)} % interval as a band,` : '';
  const key =
    `Thick line: the mean of a policy that is the best somewhere in this case${band} by how many times the ` +
    'disturbances are as severe as written; 0 is the undisturbed line. Thin lines: the other policies. Dotted rule: ' +
    `where the best changes${crossed.seeds > 1 ? ', its interval as a bar at the foot, up to the edge where it is open' : ''}. ` +
    'Whether two bands overlap does not decide who is better, for the runs are paired.';
  return `${note(key)}
<ul class="legend" aria-label="Policies">${legend.join('')}</ul>
<div class="panels">
${panels.join('\n')}
</div>
<details>
<summary>The same as tables</summary>
${crossed.found.map((one, i) => meansTable(one, crossed, i, format)).join('\n')}
</details>`;
}

/** One file with everything in it: no scripts, nothing fetched. The same experiment gives the same bytes. */
export function crossedPage(crossed: Crossed, provenance: TitledOrigins): string {
  const { title } = provenance;
  const changes = crossed.found.map(
    (one) => `<li><strong>${escapeHtml(one.name)}</strong>: ${escapeHtml(changesText(one, crossed))}</li>`,
  );
  const best = [bestTable(crossed), ...crossedNotes(crossed).map(note)];
  const seeds = crossed.seeds === 1 ? '1' : `1 to ${crossed.seeds}`;
  const sections = `${section('changes', 'Best up to which severity', `<ul class="verdict">\n${changes.join('\n')}\n</ul>`)}
${section('best', 'Best where', best.join('\n'))}
${section('charts', 'By severity', figures(crossed))}
${section('origin', 'Provenance', originList({ ...provenance, seeds }))}`;
  return framed({
    ...{ name: `${title}: crossed`, title, kind: 'crossed experiment: cases, severities, policies' },
    skip: { id: 'changes', text: 'Skip to who is best' },
    sections,
  });
}
