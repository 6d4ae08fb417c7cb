import { type Attempt, attemptFrom, NEW_ATTEMPT } from '../exercise/attempt.ts';
import type { Exercise, Setting } from '../exercise/exercise.ts';
import { expectedAt, sameSetting, scenarioAt, settingText, startOf } from '../exercise/setting.ts';
import { estimateOf, type Values, watchedOf } from '../exercise/trial.ts';
import type { Watched } from '../exercise/watched.ts';
import { estimateText, predictionsTable, theoryTable, triedTable } from '../report/classroom/trial-tables.ts';
import { byId, write } from './elements.ts';
import { Engine } from './engine.ts';
import { Kept } from './kept.ts';
import { Knobs } from './knobs.ts';
import { Pair } from './pair.ts';
import { Predictions } from './predictions.ts';
import { Result } from './result.ts';
import { type Given, Saving } from './saving.ts';

class ClassPage {
  private readonly exercise: Exercise;
  private readonly watched: readonly Watched[];
  private readonly predictions: Predictions;
  private readonly knobs: Knobs;
  private readonly result: Result;
  private readonly pair: Pair;
  private readonly saving: Saving;
  private readonly engine = new Engine(byId('program').textContent ?? '');
  private readonly kept: Kept;
  private attempt: Attempt;
  /** The runs under way; null while none are. */
  private under: { readonly setting: Setting; readonly runs: Values[] } | null = null;
  /** Which setting the chart and its tables show. */
  private shown = -1;

  constructor(given: Given) {
    const { exercise } = given;
    this.exercise = exercise;
    this.watched = watchedOf(scenarioAt(exercise, startOf(exercise)), exercise.watch);
    this.predictions = new Predictions(exercise);
    this.knobs = new Knobs(exercise);
    this.result = new Result(exercise, this.watched);
    this.pair = new Pair(this.watched);
    this.saving = new Saving(given);
    const { sha256, scenario, version } = given.madeFrom;
    this.kept = new Kept(`mendline ${version} exercise ${sha256} ${scenario ?? ''}`.trimEnd());
    this.attempt = this.read();
    this.shown = this.lastSound();
    this.listen();
    this.fill();
    this.knobs.turnTo(this.attempt.tried.at(-1)?.setting);
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
    press('save-answers', () => this.saving.answers(this.attempt));
    press('save-table', () => this.saving.table(this.attempt));
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
    if (this.attempt.tried.length !== before.tried.length) this.pair.chooseNewest();
  }

  /** Puts into the controls what was kept; predictions that are being written here stay where none are. */
  private fill(also = { predictions: true }): void {
    const { name, notes, predictions } = this.attempt;
    byId<HTMLInputElement>('student').value = name;
    byId<HTMLTextAreaElement>('notes').value = notes;
    if (also.predictions) this.predictions.fill(predictions);
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
    const predictions = this.predictions.written();
    if (predictions === null) return;
    this.keep({ predictions });
    this.show();
    this.knobs.focus();
  }

  private setting(): Setting | null {
    return this.knobs.setting((why) => this.say(`${why}.`));
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
    this.pair.chooseNewest();
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
    this.knobs.turnTo();
    this.say('');
    this.show();
    byId('question').scrollIntoView();
    this.predictions.focus();
  }

  private saveLine(): void {
    const setting = this.setting();
    if (setting !== null) this.saving.line(this.attempt, setting);
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
    this.pair.show(tried);
    if (!revealed) return;
    write(byId('predicted'), predictionsTable(this.exercise, this.attempt));
    if (this.exercise.theory !== null) write(byId('expected'), theoryTable(this.exercise, this.attempt));
  }

  private showRuns(): void {
    const { tried, revealed } = this.attempt;
    const shown = this.under ?? tried[this.shown];
    const told = revealed && this.under === null;
    this.result.show(
      shown
        ? {
            ...{ setting: shown.setting, runs: shown.runs, number: this.shown + 1 },
            expected: told ? expectedAt(this.exercise, shown.setting) : null,
          }
        : null,
    );
  }
}

export function openPage(): void {
  new ClassPage(JSON.parse(byId('exercise').textContent ?? ''));
}
