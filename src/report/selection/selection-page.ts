import type { Selection } from '../../experiment/selection/select.ts';
import { escapeHtml } from '../escape.ts';
import { heading, scrolling, section } from '../html.ts';
import { framed, originList, type TitledOrigins } from '../page-frame.ts';
import { selectionCharts } from './selection-charts.ts';
import {
  behindText,
  besideOf,
  conclusionOf,
  courseOf,
  formatOfSelection,
  measureOf,
  notesOf,
  rowsOf,
} from './selection-words.ts';

const note = (text: string) => `<p class="note">${escapeHtml(text)}</p>`;
const items = (texts: readonly string[]) => texts.map((text) => `<li>${escapeHtml(text)}</li>`).join('\n');

function table(selection: Selection): string {
  const format = formatOfSelection(selection);
  const beside = besideOf(selection);
  const rows = rowsOf(selection).map((row, i) => {
    const other = beside[i];
    const cells = [
      String(row.runs),
      ...(other ? [format.signed(other.value), format.interval(other)] : [behindText(row, format)]),
      ...[format.value(row.first.value), format.interval(row.first)],
    ];
    return `<tr><th scope="row">${escapeHtml(row.policy)}</th><td class="word">${row.standing}</td>${cells.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`;
  });
  const head = [
    ...[heading('policy'), heading('standing', 'word')],
    heading('runs'),
    ...(beside[0] ? [heading('to the best other'), heading('its interval')] : [heading('behind')]),
    ...[heading(`mean of the first ${selection.settings.firstStage} runs`), heading('its interval')],
  ];
  return scrolling('table-policies', escapeHtml(measureOf(selection)), head.join(''), rows);
}

function figures(selection: Selection): string {
  const { measure, settings, standing } = selection;
  const panels = selectionCharts(selection).map(
    ({ name, svg }) =>
      `<figure><figcaption>${escapeHtml(name)} <span>(${escapeHtml(`${measure.name}, ${measure.shown.unit}`)})</span></figcaption>${svg}</figure>`,
  );
  const grey =
    settings.procedure === 'sequential'
      ? ' Grey: where both stay; a policy is left out when the line comes above it. It closes as runs come in.'
      : '';
  const key = `Line: mean of the paired differences after so many runs of each, from the end of the first stage on; a dot where it ends.${grey}`;
  const course = standing.out.length > 0 ? `<ul>\n${items(courseOf(selection))}\n</ul>` : '';
  return `${note(key)}\n<div class="panels">\n${panels.join('\n')}\n</div>\n${course}`;
}

/** One file with everything in it: no scripts, nothing fetched. The same choice gives the same bytes. */
export function selectionPage(selection: Selection, provenance: TitledOrigins): string {
  const { title } = provenance;
  const chosen = `<ul class="verdict">\n${items(conclusionOf(selection))}\n</ul>`;
  const name = selection.standing.how === 'most runs' ? 'Undecided' : 'Chosen';
  const sections = `${section('chosen', name, chosen)}
${section('policies', 'Policies', [table(selection), ...notesOf(selection).map(note)].join('\n'))}
${section('course', 'How it went', figures(selection))}
${section('origin', 'Provenance', originList({ ...provenance, seeds: `1 to ${selection.standing.runs}` }))}`;
  return framed({
    ...{ name: `${title}: chosen`, title, kind: 'choice of the best policy' },
    skip: { id: 'chosen', text: 'Skip to what is chosen' },
    sections,
  });
}
