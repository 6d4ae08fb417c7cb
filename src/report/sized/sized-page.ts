import type { Configuration, Sized } from '../../experiment/sizing/sized.ts';
import { escapeHtml } from '../escape.ts';
import { heading, scrolling, section } from '../html.ts';
import { unfolded } from '../joined.ts';
import { framed, originList, type TitledOrigins } from '../page-frame.ts';
import { curveChart, curveKey } from './sized-charts.ts';
import { configurationRows, meanRows, type RowColumn, stepRows, tradeOff, WORDS } from './sized-rows.ts';
import { sizedNotes, sizedVerdict } from './sized-words.ts';

export interface SizedProvenance extends TitledOrigins {
  readonly about: string;
  readonly scenarioText: string;
}

const note = (text: string) => `<p class="note">${escapeHtml(text)}</p>`;

/** A table of columns; the first names the rows. */
function table(id: string, caption: string, columns: readonly RowColumn[]): string {
  const side = ({ side }: RowColumn, i: number) => (side === 'left' && i > 0 ? 'word' : '');
  const head = columns.map((one, i) => heading(one.heading.replace('\n', ' '), side(one, i))).join('');
  const rows = columns[0]!.cells.map((first, row) => {
    const others = columns.slice(1).map((one, i) => {
      const kind = side(one, i + 1);
      return `<td${kind && ` class="${kind}"`}>${escapeHtml(one.cells[row]!)}</td>`;
    });
    return `<tr><th scope="row">${escapeHtml(first)}</th>${others.join('')}</tr>`;
  });
  return scrolling(id, escapeHtml(caption), head, rows);
}

function curveSection(sized: Sized): string {
  const chart = curveChart(sized);
  if (chart === null) return note('No run gave a value of the target, so there is nothing to draw.');
  const { configurations, targets } = sized;
  const measure = targets[0]!.name;
  return `${note(curveKey(sized))}
<div class="panels">
<figure><figcaption>What ${escapeHtml(measure)} costs</figcaption>${chart}</figure>
</div>
${table('table-curve', `Cheapest found for each level of ${measure}`, configurationRows(sized, tradeOff(sized)))}
<details>
<summary>All ${configurations.length} that were simulated</summary>
${table('table-all', 'Choices of sizes by cost', configurationRows(sized, configurations))}
</details>`;
}

/** What the words of the tables mean. */
const READING: readonly (readonly [Configuration['word'], string])[] = [
  ['meets', 'the runs of the check show that the mean meets every target'],
  [
    'misses',
    'they show that the mean misses a target, or meets it by less than is worth having. Its first runs may look better: ' +
      'they chose what was looked at, and do not count here',
  ],
  [
    'undecided',
    'neither was shown when the check of it ended: the choice turned out to cost no more, or the runs were over',
  ],
  [
    'not checked',
    'no run of the check is of it: the choice costs no more, so that it need not be decided, or the runs were over before',
  ],
  ['no value', 'a run gave no value of a target, so that nothing is said'],
];

function reading({ configurations }: Sized): string {
  const found = new Set(configurations.map(({ word }) => word));
  const rows = READING.filter(([word]) => found.has(word)).map(
    ([word, means]) => `<dt>${WORDS[word]}</dt><dd>${escapeHtml(means)}</dd>`,
  );
  return rows.length > 0 ? `<dl>\n${rows.join('\n')}\n</dl>\n` : '';
}

/** What is said of a step, or that nothing is. */
function closer(sized: Sized): string {
  const at = sized.chosen ? 'the choice' : 'what seems best';
  const means = meanRows(sized);
  const steps = stepRows(sized);
  return [
    ...(means.length > 0 ? [table('table-means', `Means of ${at}`, means)] : []),
    ...(steps.length > 0 ? [table('table-steps', `One step more or less than ${at}`, steps)] : []),
    ...(means.length + steps.length === 0 ? [note('The runs ended before there was anything to tell.')] : []),
  ].join('\n');
}

/** One file with everything in it: no scripts, nothing fetched. The same sizing gives the same bytes. */
export function sizedPage(sized: Sized, provenance: SizedProvenance): string {
  const { title, about, file, scenarioText, joined } = provenance;
  const verdict = sizedVerdict(sized).map((text) => `<li>${escapeHtml(text)}</li>`);
  const sections = [
    section('choice', 'How much is enough', `<ul class="verdict">\n${verdict.join('\n')}\n</ul>`),
    section('steps', 'What one more buys', closer(sized)),
    section('curve', 'What it costs', curveSection(sized)),
    section('reading', 'How to read this', `${reading(sized)}${sizedNotes(sized).map(note).join('\n')}`),
    section('about', 'The line', `<p>${escapeHtml(about)}</p>`),
    section('origin', 'Provenance', originList({ ...provenance, seeds: seedsText(sized) })),
    section('text', 'Scenario text', [unfolded(file, scenarioText), ...joined.map((one) => unfolded(one.file, one.text))].join('\n')), // biome-ignore format: one line reads better
  ].join('\n');
  return framed({
    ...{ name: `${title}: ${sized.name}`, title: `${title}: ${sized.name}`, kind: 'sizing' },
    skip: { id: 'choice', text: 'Skip to the choice' },
    sections,
  });
}

const seedsText = ({ first, runs }: Sized): string =>
  `1 to ${first} for each choice at first, then as the check took; ${runs} runs in all`;
