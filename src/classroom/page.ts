import { type Attempt, attemptFrom, NEW_ATTEMPT, type Tried } from '../exercise/attempt.ts';
import type { Exercise, Setting } from '../exercise/exercise.ts';
import {
  expectedAt,
  policyAt,
  rawAt,
  refusalOf,
  sameSetting,
  scenarioAt,
  settingText,
  startOf,
} from '../exercise/setting.ts';
import { estimateOf, type Values, watchedOf } from '../exercise/trial.ts';
import type { Watched } from '../exercise/watched.ts';
import { answersCsv, answersJson, type MadeFrom } from '../report/classroom/answers.ts';
import { controlId, predictionId } from '../report/classroom/controls.ts';
import { savedName } from '../report/classroom/file-name.ts';
import { tighteningChart } from '../report/classroom/tightening-chart.ts';
import {
  differenceTable,
  differenceText,
  estimateText,
  growing,
  growingTable,
  measuresTable,
  predictionsTable,
  theoryTable,
  triedTable,
} from '../report/classroom/trial-tables.ts';
import { escapeHtml } from '../report/escape.ts';
import { typed } from '../report/origin.ts';
import { byId, offer, write } from './elements.ts';
import { Engine } from './engine.ts';
import { Kept } from './kept.ts';

/** What the maker of the page has put into it. */
interface Given {
  readonly exercise: Exercise;
  readonly madeFrom: MadeFrom;
  /** Of the exercise, for the names of what is saved. */
  readonly name: string;
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
    const { sha256, scenario, version } = given.madeFrom;
    this.kept = new Kept(`mendline ${version} exercise ${sha256} ${scenario ?? ''}`.trimEnd());
    this.attempt = this.read();
    this.shown = this.lastSound();
    this.listen();
    this.fill();
    this.setKnobs();
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
    press('save-table', () => this.saveTable());
    press('save-line', () => this.saveLine());
    const sure = byId<HTMLDialogElement>('sure');
    press('reset', () => {
      // The answer before, which closing by Escape would leave.
      sure.returnValue = '';
      sure.showModal();
    });
    sure.addEventListener('close', () => {
      if (sure.returnValue === 'clear') this.reset();
    });
    this.kept.onChange(() => this.renew());
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

  private read(): Attempt {
    return attemptFrom(this.kept.read(), this.exercise) ?? NEW_ATTEMPT;
  }

  private lastSound(): number {
    return this.attempt.tried.findLastIndex(({ failure }) => failure === null);
  }

  /** Goes on from what another page of the exercise has kept, so that neither undoes the other. */
  private renew(): void {
    const before = this.attempt;
    this.attempt = this.read();
    const written = this.attempt.predictions.length > 0;
    if (!written && this.under !== null) {
      this.engine.stop();
      this.under = null;
    }
    this.shown = this.under === null ? this.lastSound() : this.placeOf(this.under.setting);
    this.fill({ predictions: written || before.predictions.length > 0 });
    this.show();
    if (this.attempt.tried.length !== before.tried.length) this.choosePair();
  }

  /** Puts into the controls what was kept; predictions that are being written here stay where none are. */
  private fill(also = { predictions: true }): void {
    const { name, notes, predictions } = this.attempt;
    byId<HTMLInputElement>('student').value = name;
    byId<HTMLTextAreaElement>('notes').value = notes;
    if (!also.predictions) return;
    for (const [i, prediction] of this.exercise.predictions.entries()) {
      const written = predictions[i] ?? '';
      if (prediction.kind === 'number') byId<HTMLInputElement>(predictionId(i)).value = written;
      else
        for (const [k, choice] of prediction.choices.entries())
          byId<HTMLInputElement>(predictionId(i, k)).checked = choice === written;
    }
  }

  /** Turns the knobs to the setting that was tried last. */
  private setKnobs(): void {
    const setting = this.attempt.tried.at(-1)?.setting ?? startOf(this.exercise);
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

  /** Where in the list of settings this one stands, or would stand. */
  private placeOf(setting: Setting): number {
    const { tried } = this.attempt;
    const place = tried.findIndex((one) => sameSetting(this.exercise, one.setting, setting));
    return place < 0 ? tried.length : place;
  }

  /** Whether all seeds have run at a setting, which is then shown: they would give the same again. */
  private hasRun(setting: Setting): boolean {
    const place = this.placeOf(setting);
    const before = this.attempt.tried[place];
    if (!before || (before.failure === null && before.runs.length < this.exercise.seeds)) return false;
    if (before.failure === null) this.shown = place;
    const again = before.failure === null ? 'the same seeds give the same numbers' : before.failure;
    this.say(`Setting ${place + 1} is this one, and has run: ${again}${/[.!?]$/.test(again) ? '' : '.'}`);
    this.showRuns();
    return true;
  }

  private run(): void {
    const setting = this.setting();
    if (setting === null || this.under !== null || this.hasRun(setting)) return;
    const under = { setting, runs: [] as Values[] };
    this.under = under;
    this.shown = this.placeOf(setting);
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
        onFault: (why) => this.giveUp(`No result: ${why}.`),
      },
    );
  }

  private stop(): void {
    this.engine.stop();
    if (this.under !== null && this.under.runs.length >= 2) return this.finish(null);
    this.giveUp('Stopped before there were two runs, so that there is no interval.');
  }

  /** Leaves the setting as if it had not been tried. */
  private giveUp(why: string): void {
    this.under = null;
    this.shown = this.lastSound();
    this.say(why);
    this.show();
    this.offerRun();
  }

  private finish(failure: string | null): void {
    const { setting, runs } = this.under!;
    this.under = null;
    const place = this.placeOf(setting);
    const tried = [...this.attempt.tried];
    // Who stopped sooner than before keeps the runs there were.
    if (failure !== null || runs.length >= (tried[place]?.runs.length ?? 0))
      tried[place] = { setting, runs: failure === null ? runs : [], failure };
    this.keep({ tried });
    this.shown = place;
    const number = place + 1;
    if (failure === null) {
      const [first] = this.watched;
      const kept = tried[place]!.runs;
      const told = estimateText(first!, estimateOf(kept, 0, first!));
      this.say(`Setting ${number} has run under ${kept.length} seeds: ${told}.`);
    } else this.say(`At setting ${number} the line cannot run: ${failure}`);
    this.show();
    this.choosePair();
    this.offerRun();
  }

  /** The button that was pressed loses the focus when it is put out of use. */
  private offerRun(): void {
    const { activeElement } = document;
    if (activeElement === document.body || activeElement === byId('stop')) byId('run').focus();
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
    this.setKnobs();
    this.say('');
    this.show();
    byId('question').scrollIntoView();
    byId(this.exercise.predictions[0]!.kind === 'number' ? predictionId(0) : predictionId(0, 0)).focus();
  }

  private saveAnswers(): void {
    const answers = answersJson(this.exercise, this.attempt, this.given.madeFrom);
    offer(this.nameOf('answers', 'json'), `${JSON.stringify(answers, null, 2)}\n`, 'application/json');
  }

  private saveTable(): void {
    offer(this.nameOf('answers', 'csv'), answersCsv(this.exercise, this.attempt), 'text/csv');
  }

  private nameOf(what: string, suffix: string): string {
    return savedName(what, { exercise: this.given.name, pupil: this.attempt.name, suffix });
  }

  /** The line as the knobs stand, which the command line runs to the same numbers. */
  private saveLine(): void {
    const setting = this.setting();
    if (setting === null) return;
    const raw = rawAt(this.exercise, setting) as { readonly run: object };
    const line = { ...raw, run: { ...raw.run, seeds: this.exercise.seeds } };
    const file = this.nameOf('line', 'yaml');
    offer(file, `${JSON.stringify(line, null, 2)}\n`, 'application/yaml');
    const policy = policyAt(this.exercise, setting);
    byId('line-command').textContent = typed(['run', file, '--policy', policy]);
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
    write(byId('tried-table'), tried.length > 0 ? triedTable(this.exercise, tried, this.watched) : '');
    this.showRuns();
    this.showPairs();
    if (!revealed) return;
    write(byId('predicted'), predictionsTable(this.exercise, this.attempt));
    if (this.exercise.theory !== null) write(byId('expected'), theoryTable(this.exercise, this.attempt));
  }

  private showRuns(): void {
    const shown: Pick<Tried, 'setting' | 'runs'> | undefined = this.under ?? this.attempt.tried[this.shown];
    const runs = shown?.runs ?? [];
    const progress = byId<HTMLProgressElement>('progress');
    progress.value = runs.length;
    const target = byId('result');
    if (!shown || runs.length < 2) {
      write(target, '');
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
    const html =
      `<h3>Setting ${this.shown + 1}: ${escapeHtml(text)}</h3>` +
      `<figure><figcaption>${escapeHtml(unit)}, as runs come in${dashed}</figcaption>${chart}</figure>` +
      measuresTable(this.watched, runs) +
      `<details><summary>The chart as a table</summary>${growingTable(measure!, estimates)}</details>`;
    const before = target.querySelector('details');
    const read = before?.contains(document.activeElement) ?? false;
    write(target, html);
    const details = target.querySelector('details')!;
    details.open = before?.open ?? false;
    if (read) details.querySelector('summary')!.focus();
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
      write(select, sound.map((i) => `<option value="${i}">setting ${i + 1}</option>`).join(''));
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
    const pair = a && b && one !== other && { one: a, other: b, names: [one! + 1, other! + 1] as const };
    write(
      byId('difference-said'),
      escapeHtml(pair ? differenceText(this.watched, pair) : 'Choose two settings.'),
    );
    write(byId('difference'), pair ? differenceTable(this.watched, pair) : '');
  }
}

export function openPage(): void {
  new ClassPage(JSON.parse(byId('exercise').textContent ?? ''));
}
