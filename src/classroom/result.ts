import type { Exercise, Setting } from '../exercise/exercise.ts';
import { settingText } from '../exercise/setting.ts';
import type { Values } from '../exercise/trial.ts';
import type { Watched } from '../exercise/watched.ts';
import { tighteningChart } from '../report/classroom/tightening-chart.ts';
import { growing, growingTable, measuresTable } from '../report/classroom/trial-tables.ts';
import { escapeHtml } from '../report/escape.ts';
import { byId, write } from './elements.ts';

const CHART_WIDTH = { least: 300, most: 640 };

/** The runs of one setting, under way or done. */
interface Shown {
  readonly setting: Setting;
  readonly runs: readonly Values[];
  /** Of the setting, from 1 on. */
  readonly number: number;
  /** What theory expects of each measure, once that may be told; null where it says nothing. */
  readonly expected: Readonly<Record<string, number>> | null;
}

/** What the runs of a setting gave: how the interval of the first measure grew tighter, and all measures. */
export class Result {
  private readonly exercise: Exercise;
  private readonly watched: readonly Watched[];

  constructor(exercise: Exercise, watched: readonly Watched[]) {
    this.exercise = exercise;
    this.watched = watched;
  }

  show(shown: Shown | null): void {
    const runs = shown?.runs ?? [];
    byId<HTMLProgressElement>('progress').value = runs.length;
    const target = byId('result');
    if (shown === null || runs.length < 2) {
      write(target, '');
      return;
    }
    const before = target.querySelector('details');
    const read = before?.contains(document.activeElement) ?? false;
    write(target, this.html(shown, target.clientWidth));
    const details = target.querySelector('details')!;
    details.open = before?.open ?? false;
    if (read) details.querySelector('summary')!.focus();
  }

  private html({ setting, runs, number, expected }: Shown, room: number): string {
    const [measure] = this.watched;
    const estimates = growing(measure!, runs);
    const theory = expected?.[measure!.name] ?? null;
    const { least, most } = CHART_WIDTH;
    const chart = tighteningChart({
      ...{ estimates, expected: theory, factor: measure!.shown.factor, most: this.exercise.seeds },
      width: Math.max(least, Math.min(most, room)),
      label: `${measure!.name} after 2 to ${runs.length} runs, with 95 % intervals; the table below holds the numbers`,
    });
    const unit = `${measure!.name}, ${measure!.shown.unit}`;
    const dashed = theory === null ? '' : ' <span>(dashed: what theory expects)</span>';
    return (
      `<h3>Setting ${number}: ${escapeHtml(settingText(this.exercise, setting))}</h3>` +
      `<figure><figcaption>${escapeHtml(unit)}, as runs come in${dashed}</figcaption>${chart}</figure>` +
      measuresTable(this.watched, runs) +
      `<details><summary>The chart as a table</summary>${growingTable(measure!, estimates)}</details>`
    );
  }
}
