import { answersOf } from '../exercise/answers.ts';
import { type Attempt, attemptFrom, NEW_ATTEMPT, type Tried } from '../exercise/attempt.ts';
import type { Exercise, Setting } from '../exercise/exercise.ts';
import {
  expectedAt,
  policyAt,
  rawAt,
  refusalOf,
  scenarioAt,
  settingText,
  startOf,
} from '../exercise/setting.ts';
import { estimateOf, type Values, watchedOf } from '../exercise/trial.ts';
import type { Watched } from '../exercise/watched.ts';
import { controlId, predictionId } from '../report/classroom/controls.ts';
import { tighteningChart } from '../report/classroom/tightening-chart.ts';
import {
  differenceTable,
  estimateText,
  growing,
  growingTable,
  measuresTable,
  predictionsTable,
  theoryTable,
  triedTable,
} from '../report/classroom/trial-tables.ts';
import { escapeHtml } from '../report/escape.ts';
import { byId, offer } from './elements.ts';
import { Engine } from './engine.ts';
import { Kept } from './kept.ts';

/** What the maker of the page has put into it. */
interface Given {
  readonly exercise: Exercise;
  readonly sha256: string;
  readonly version: string;
}

const CHART_WIDTH = { least: 300, most: 640 };

class ClassPage {
  private readonly given: Given;
  private readonly exercise: Exercise;
  private readonly watched: readonly Watched[];
  private readonly engine = new Engine(byId('program').textContent ?? '');
  private readonly kept: Kept;
  private attempt: Attempt;
  /** The runs under way; null while none are. */
  private under: { readonly setting: Setting; readonly runs: Values[] } | null = null;
  /** Which setting the chart and its tables show. */
  private shown = -1;

  constructor(given: Given) {
    this.given = given;
    this.exercise = given.exercise;
    this.watched = watchedOf(scenarioAt(given.exercise, startOf(given.exercise)), given.exercise.watch);
    this.kept = new Kept(`mendline exercise ${given.sha256}`);
    this.attempt = attemptFrom(this.kept.read(), given.exercise) ?? NEW_ATTEMPT;
    this.shown = this.attempt.tried.findLastIndex(({ failure }) => failure === null);
    this.listen();
    this.fill();
    this.show();
  }

  private listen(): void {
    const submit = (id: string, act: () => void) =>
      byId(id).addEventListener('submit', (event) => {
        event.preventDefault();
        act();
      });
    const press = (id: string, act: () => void) => byId(id).addEventListener('click', act);
    submit('predictions', () => this.writeDown());
    submit('knobs', () => this.run());
    press('stop', () => this.stop());
    press('reveal', () => this.reveal());
    press('save-answers', () => this.saveAnswers());
    press('save-line', () => this.saveLine());
    press('reset', () => byId<HTMLDialogElement>('sure').showModal());
    byId<HTMLDialogElement>('sure').addEventListener('close', () => {
      if (byId<HTMLDialogElement>('sure').returnValue === 'clear') this.reset();
    });
    for (const id of ['one', 'other']) byId(id).addEventListener('change', () => this.showDifference());
    for (const id of ['student', 'notes'])
      byId(id).addEventListener('input', () =>
        this.keep({
          name: byId<HTMLInputElement>('student').value,
          notes: byId<HTMLTextAreaElement>('notes').value,
        }),
      );
    addEventListener('beforeprint', () => this.toPaper());
  }

  /** What a control shows only in part, or not at all on paper. */
  private toPaper(): void {
    const { name, notes, tried } = this.attempt;
    byId('student-on-paper').textContent = name || '\u00a0';
    byId('notes-on-paper').textContent = notes;
    byId('notes-by-hand').hidden = notes.trim() !== '';
    byId('tried-by-hand').hidden = tried.length > 0;
  }

  /** Puts into the controls what was kept. */
  private fill(): void {
    const { name, notes, predictions, tried } = this.attempt;
    byId<HTMLInputElement>('student').value = name;
    byId<HTMLTextAreaElement>('notes').value = notes;
    for (const [i, prediction] of this.exercise.predictions.entries()) {
      const written = predictions[i] ?? '';
      if (prediction.kind === 'number') byId<HTMLInputElement>(predictionId(i)).value = written;
      else
        for (const [k, choice] of prediction.choices.entries())
          byId<HTMLInputElement>(predictionId(i, k)).checked = choice === written;
    }
    const setting = tried.at(-1)?.setting ?? startOf(this.exercise);
    for (const [i, { name }] of this.exercise.knobs.entries())
      byId<HTMLInputElement>(controlId(i)).value = String(setting[name]);
  }

  private keep(change: Partial<Attempt>): void {
    this.attempt = { ...this.attempt, ...change };
    const kept = this.kept.write(JSON.stringify(this.attempt));
    byId('kept').hidden = kept;
  }

  private say(text: string): void {
    byId('status').textContent = text;
  }

  private writeDown(): void {
    const predictions = this.exercise.predictions.map((prediction, i) => {
      if (prediction.kind === 'number') return byId<HTMLInputElement>(predictionId(i)).value.trim();
      const chosen = prediction.choices.findIndex(
        (_, k) => byId<HTMLInputElement>(predictionId(i, k)).checked,
      );
      return prediction.choices[chosen] ?? '';
    });
    if (predictions.includes('')) return;
    this.keep({ predictions });
    this.show();
    byId(controlId(0)).focus();
  }

  /** Where the knobs stand, or what keeps one from standing there, with that knob in focus. */
  private setting(): Setting | null {
    const setting: Record<string, number | string> = {};
    for (const [i, knob] of this.exercise.knobs.entries()) {
      const control = byId<HTMLInputElement>(controlId(i));
      const value = knob.kind === 'number' ? Number(control.value || Number.NaN) : control.value;
      const refused = refusalOf(knob, value);
      control.setAttribute('aria-invalid', String(refused !== null));
      if (refused !== null) {
        this.say(`${refused}.`);
        control.focus();
        return null;
      }
      setting[knob.name] = value;
    }
    return setting;
  }

  private run(): void {
    const setting = this.setting();
    if (setting === null || this.under !== null) return;
    const under = { setting, runs: [] as Values[] };
    this.under = under;
    this.shown = this.attempt.tried.length;
    this.say(`Running ${settingText(this.exercise, setting)}.`);
    this.show();
    this.engine.run(
      { exercise: this.exercise, setting },
      {
        onRun: (values) => {
          under.runs.push(values);
          requestAnimationFrame(() => this.under === under && this.showRuns());
        },
        onDone: () => this.finish(null),
        onFailure: (why) => this.finish(why),
      },
    );
  }

  private stop(): void {
    this.engine.stop();
    if (this.under !== null && this.under.runs.length >= 2) return this.finish(null);
    this.under = null;
    this.shown = this.attempt.tried.findLastIndex(({ failure }) => failure === null);
    this.say('Stopped before there were two runs, so that there is no interval.');
    this.show();
  }

  private finish(failure: string | null): void {
    const { setting, runs } = this.under!;
    this.under = null;
    this.keep({ tried: [...this.attempt.tried, { setting, runs: failure === null ? runs : [], failure }] });
    const number = this.attempt.tried.length;
    if (failure === null) {
      const [first] = this.watched;
      const told = estimateText(first!, estimateOf(runs, 0, first!));
      this.say(`Setting ${number} has run under ${runs.length} seeds: ${told}.`);
    } else this.say(`At setting ${number} the line cannot run: ${failure}`);
    this.show();
    this.choosePair();
    // The button that was pressed lost the focus when it was put out of use.
    if (document.activeElement === document.body) byId('run').focus();
  }

  private reveal(): void {
    this.keep({ revealed: true });
    this.show();
    byId('revealed').focus();
  }

  private reset(): void {
    this.engine.stop();
    this.under = null;
    this.shown = -1;
    this.keep(NEW_ATTEMPT);
    this.fill();
    this.say('');
    this.show();
    byId('question').scrollIntoView();
    byId(this.exercise.predictions[0]!.kind === 'number' ? predictionId(0) : predictionId(0, 0)).focus();
  }

  private saveAnswers(): void {
    const text = `${JSON.stringify(answersOf(this.exercise, this.attempt, this.given), null, 2)}\n`;
    offer('answers.json', text, 'application/json');
  }

  /** The line as the knobs stand, which the command line runs to the same numbers. */
  private saveLine(): void {
    const setting = this.setting();
    if (setting === null) return;
    const raw = rawAt(this.exercise, setting) as { readonly run: object };
    const line = { ...raw, run: { ...raw.run, seeds: this.exercise.seeds } };
    offer('line.yaml', `${JSON.stringify(line, null, 2)}\n`, 'application/yaml');
    byId('line-command').textContent =
      `mendline run line.yaml --policy "${policyAt(this.exercise, setting)}"`;
    byId('line-saved').hidden = false;
  }

  /** Brings all that depends on how far the attempt has come up to date. */
  private show(): void {
    const { predictions, tried, revealed } = this.attempt;
    const written = predictions.length > 0;
    byId<HTMLFieldSetElement>('predicting').disabled = written;
    byId('written').hidden = !written;
    byId<HTMLFieldSetElement>('turning').disabled = !written || this.under !== null;
    byId<HTMLButtonElement>('run').disabled = !written || this.under !== null;
    byId('locked').hidden = written;
    byId<HTMLButtonElement>('stop').disabled = this.under === null;
    byId<HTMLButtonElement>('save-line').disabled = !written;
    byId('running').hidden = this.under === null;
    const sound = tried.some(({ failure }) => failure === null);
    byId<HTMLButtonElement>('reveal').disabled = !sound || revealed;
    byId('revealed').hidden = !revealed;
    byId('unrevealed').hidden = revealed;
    byId('written-exercise').hidden = !revealed;
    byId('tried-none').hidden = tried.length > 0;
    byId('tried-table').innerHTML = tried.length > 0 ? triedTable(this.exercise, tried, this.watched) : '';
    this.showRuns();
    this.showPairs();
    if (!revealed) return;
    byId('predicted').innerHTML = predictionsTable(this.exercise, this.attempt);
    if (this.exercise.theory !== null) byId('expected').innerHTML = theoryTable(this.exercise, this.attempt);
  }

  private showRuns(): void {
    const shown: Pick<Tried, 'setting' | 'runs'> | undefined = this.under ?? this.attempt.tried[this.shown];
    const runs = shown?.runs ?? [];
    const progress = byId<HTMLProgressElement>('progress');
    progress.value = runs.length;
    const target = byId('result');
    if (!shown || runs.length < 2) {
      target.innerHTML = '';
      return;
    }
    const [measure] = this.watched;
    const estimates = growing(measure!, runs);
    const text = settingText(this.exercise, shown.setting);
    const expected =
      this.attempt.revealed && this.under === null
        ? (expectedAt(this.exercise, shown.setting)?.[measure!.name] ?? null)
        : null;
    const { least, most } = CHART_WIDTH;
    const chart = tighteningChart({
      ...{ estimates, expected, factor: measure!.shown.factor, most: this.exercise.seeds },
      width: Math.max(least, Math.min(most, target.clientWidth)),
      label: `${measure!.name} after 2 to ${runs.length} runs, with 95 % intervals; the table below holds the numbers`,
    });
    const unit = `${measure!.name}, ${measure!.shown.unit}`;
    const dashed = expected === null ? '' : ' <span>(dashed: what theory expects)</span>';
    target.innerHTML =
      `<h3>Setting ${this.shown + 1}: ${escapeHtml(text)}</h3>` +
      `<figure><figcaption>${escapeHtml(unit)}, as runs come in${dashed}</figcaption>${chart}</figure>` +
      measuresTable(this.watched, runs) +
      `<details><summary>The chart as a table</summary>${growingTable(measure!, estimates)}</details>`;
  }

  private soundSettings(): number[] {
    return this.attempt.tried.flatMap(({ failure }, i) => (failure === null ? [i] : []));
  }

  /** The two settings that may be compared; what was chosen stays. */
  private showPairs(): void {
    const sound = this.soundSettings();
    byId('pair').hidden = sound.length < 2;
    for (const id of ['one', 'other']) {
      const select = byId<HTMLSelectElement>(id);
      const before = select.value;
      select.innerHTML = sound.map((i) => `<option value="${i}">setting ${i + 1}</option>`).join('');
      if (sound.map(String).includes(before)) select.value = before;
    }
    this.showDifference();
  }

  /** The newest against the one before. */
  private choosePair(): void {
    const [other, one] = this.soundSettings().slice(-2);
    if (one === undefined) return;
    byId<HTMLSelectElement>('one').value = String(one);
    byId<HTMLSelectElement>('other').value = String(other);
    this.showDifference();
  }

  private showDifference(): void {
    const [one, other] = ['one', 'other'].map((id) =>
      Number(byId<HTMLSelectElement>(id).value || Number.NaN),
    );
    const { tried } = this.attempt;
    const [a, b] = [tried[one!], tried[other!]];
    byId('difference').innerHTML =
      a && b && one !== other
        ? differenceTable(this.watched, { one: a, other: b, names: [one! + 1, other! + 1] })
        : '<p class="note">Choose two settings.</p>';
  }
}

export function openPage(): void {
  new ClassPage(JSON.parse(byId('exercise').textContent ?? ''));
}
