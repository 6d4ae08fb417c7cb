import type { Exercise } from '../../exercise/exercise.ts';
import { theoryNamed } from '../../exercise/theories/index.ts';
import { CLASS_FORMAT } from '../documents.ts';
import { escapeHtml } from '../escape.ts';
import { dataElement, section } from '../html.ts';
import { typed } from '../origin.ts';
import { framed } from '../page-frame.ts';
import type { MadeFrom } from './answers.ts';
import { CLASS_STYLE } from './class-style.ts';
import { knobControls, predictionControls } from './controls.ts';
import { exerciseName } from './file-name.ts';
import { triedByHand } from './trial-tables.ts';

/** All that a page is made of. */
interface ClassSource {
  readonly exercise: Exercise;
  readonly file: string;
  /** Of the exercise's text. */
  readonly sha256: string;
  /** The exercise as it was written. */
  readonly text: string;
  /** The scenario that it names; null where it holds its own. */
  readonly scenario: { readonly file: string; readonly sha256: string } | null;
  readonly version: string;
  /** Words of the command line behind `mendline`. */
  readonly command: readonly string[];
  /** The engine and what works the page, as one text. */
  readonly program: string;
}

/** Paragraphs, which empty lines part. */
const prose = (text: string): string =>
  text
    .trim()
    .split(/\n\s*\n/)
    .map((paragraph) => `<p>${escapeHtml(paragraph)}</p>`)
    .join('\n');

/** To write on, where the page is printed before anything has been found. */
const LINES = 8;

const question = ({ question }: Exercise) =>
  `<p class="on-paper name-line">Name <span id="student-on-paper"></span></p>
<div class="prose">${prose(question)}</div>
<noscript><p class="warning">This page runs the line in your browser, and the browser lets no page run anything. Allow scripts to work on it.</p></noscript>`;

const prediction = (exercise: Exercise) =>
  `<form id="predictions">
<fieldset id="predicting" class="bare">
${predictionControls(exercise)}
<p class="buttons"><button type="submit" class="main">Write it down</button></p>
</fieldset>
<p id="written" class="note" hidden>Written down. It stays as it is until you start again.</p>
</form>`;

const turning = (exercise: Exercise) =>
  `<p id="locked" class="note">Write your prediction down first; then the knobs can be turned.</p>
<form id="knobs">
<fieldset id="turning" class="bare" disabled>
${knobControls(exercise)}
</fieldset>
<p class="buttons"><button type="submit" id="run" class="main" disabled>Run ${exercise.seeds} seeds</button>
<button type="button" id="stop" disabled>Stop</button></p>
<p id="running" hidden><label for="progress">Runs done</label> <progress id="progress" max="${exercise.seeds}" value="0"></progress></p>
</form>
<p id="status" class="status" role="status"></p>
<div id="result"></div>`;

const tried = (exercise: Exercise) => `<p id="tried-none" class="note">Nothing has run yet.</p>
<div id="tried-by-hand" class="on-paper by-hand">${triedByHand(exercise)}</div>
<div id="tried-table"></div>
<div id="pair" hidden>
<p class="buttons"><label for="one">Compare</label> <select id="one"></select>
<label for="other">with</label> <select id="other"></select></p>
<p id="difference-said" class="note" aria-live="polite"></p>
<div id="difference"></div>
</div>`;

function revealing({ theory, source, discussion, teaches }: Exercise): string {
  const found = theory === null ? undefined : theoryNamed(theory);
  const formula = found
    ? `<div id="expected"></div>
<div class="prose"><p><strong>${escapeHtml(found.name)}.</strong> ${escapeHtml(found.says)}</p>
<p class="note">Source: ${escapeHtml(found.source)}.</p></div>`
    : '<p class="note">No formula is known for this line: the runs are all there is.</p>';
  return `<p id="unrevealed" class="note">Once something has run, you can have the answer.</p>
<p class="buttons"><button type="button" id="reveal" disabled>Reveal the answer</button></p>
<div id="revealed" tabindex="-1" hidden>
<div id="predicted"></div>
${formula}
<div class="prose">${prose(discussion)}
<p><strong>What it teaches.</strong> ${escapeHtml(teaches.trim())}</p>
<p class="note">Source of the exercise: ${escapeHtml(source.trim())}</p></div>
</div>`;
}

const ANSWERS = `<p class="control"><label for="student">Your name</label> <input id="student" type="text" autocomplete="off"></p>
<p class="control"><label for="notes">What you found, in your own words</label> <textarea id="notes"></textarea></p>
<p id="notes-on-paper" class="on-paper words"></p>
<div id="notes-by-hand" class="on-paper lines">${'<span></span>'.repeat(LINES)}</div>
<p id="kept" class="note" hidden>This browser keeps nothing for this page: save your answers before you close it.</p>
<p class="buttons"><button type="button" id="save-answers">Save the answers</button>
<button type="button" id="save-table">Save as a table</button>
<button type="button" id="save-line" disabled>Save the line as the knobs stand</button>
<button type="button" id="reset">Start again</button></p>
<p id="line-saved" class="note" hidden>The command line gives the same numbers from the file: <code id="line-command"></code></p>
<dialog id="sure" aria-labelledby="sure-text"><form method="dialog">
<p id="sure-text">Clear the prediction, all settings tried and the notes?</p>
<p class="buttons"><button value="keep" class="main">Keep them</button> <button value="clear">Clear them</button></p>
</form></dialog>`;

const READING = `<p>A run is the line under one seed: the numbers from which all its chances are drawn. Another seed is another
day. The same setting under the same seed gives the same numbers, here and on the command line, to the last digit.</p>
<p>A mean over runs has a 95 % interval: were the whole experiment repeated often, 95 of 100 such intervals would hold the
true mean. So about one in twenty misses it, and those of settings under the same seeds tend to miss together.</p>
<p>Two settings are compared run by run under the same seed, so that both meet the same luck; the differences vary less than
the runs do.</p>`;

/** One file that a class works on: the exercise, and the engine that answers it. */
export function classPage(source: ClassSource): string {
  const { exercise, file, sha256, text, scenario, version, command, program } = source;
  const named = (what: string, { file, sha256 }: { file: string; sha256: string }) =>
    `<dt>${what}</dt><dd>${escapeHtml(file)}</dd>\n<dt>its SHA-256</dt><dd><code>${escapeHtml(sha256)}</code></dd>\n`;
  const runsOf: MadeFrom = { version, sha256, scenario: scenario?.sha256 ?? null };
  const origin = `<dl>
${named('exercise', { file, sha256 })}${scenario ? named('scenario', scenario) : ''}<dt>mendline</dt><dd>version ${escapeHtml(version)}</dd>
<dt>command</dt><dd><code>${escapeHtml(typed(command))}</code></dd>
</dl>
<details id="written-exercise" hidden><summary>The exercise as it was written</summary><pre tabindex="0">${escapeHtml(text)}</pre></details>`;
  return framed({
    name: `${exercise.title} - exercise`,
    title: exercise.title,
    kind: 'exercise',
    skip: { id: 'prediction', text: 'Skip to your prediction' },
    style: CLASS_STYLE,
    madeFrom: {
      ...{ format: CLASS_FORMAT, version, command, exercise: { file, title: exercise.title, sha256 } },
      ...(scenario && { scenario }),
    },
    program: {
      text: program,
      data: dataElement('exercise', { exercise, madeFrom: runsOf, name: exerciseName(file) }),
    },
    sections: [
      section('question', 'The question', question(exercise)),
      section('prediction', 'Your prediction', prediction(exercise)),
      section('trying', 'Turn the knobs', turning(exercise)),
      section('tried', 'Settings tried', tried(exercise)),
      section('answer', 'The answer', revealing(exercise)),
      section('handing-in', 'Your answers', ANSWERS),
      section('reading', 'How to read this', `<div class="prose">${READING}</div>`),
      section('origin', 'Where this comes from', origin),
    ].join('\n'),
  });
}
