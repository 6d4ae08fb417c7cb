import type { Attempt, Tried } from '../../exercise/attempt.ts';
import type { Exercise } from '../../exercise/exercise.ts';
import { expectedAt, sameSetting, scenarioAt, startOf, valueText } from '../../exercise/setting.ts';
import { differenceOf, estimateOf, type Values, watchedOf } from '../../exercise/trial.ts';
import type { Watched } from '../../exercise/watched.ts';
import type { Estimate } from '../../statistics/estimate.ts';
import { escapeHtml } from '../escape.ts';
import { formatOf } from '../format.ts';
import { heading, scrolling } from '../html.ts';
import { counted } from '../words.ts';

const NONE = '\u2013';
const cellOf = (text: string) => `<td>${escapeHtml(text)}</td>`;
const rowOf = (name: string, cells: readonly string[]) =>
  `<tr><th scope="row">${escapeHtml(name)}</th>${cells.join('')}</tr>`;
const row = (name: string, texts: readonly string[]) => rowOf(name, texts.map(cellOf));
const unitOf = ({ name, shown }: Watched) => `${name}, ${shown.unit}`;

/** An estimate as two cells, mean and interval. */
export function estimateCells(measure: Watched, estimate: Estimate | null): [string, string] {
  if (estimate === null) return [NONE, NONE];
  const format = formatOf({ measure, rows: [{ estimate }] });
  return [format.value(estimate.value), format.interval(estimate)];
}

/** `44.98 good /h, 44.82 to 45.15`. */
export function estimateText(measure: Watched, estimate: Estimate | null): string {
  if (estimate === null) return `${measure.name}: no value`;
  const [mean, interval] = estimateCells(measure, estimate);
  return `${measure.name} ${mean} ${measure.shown.unit}, interval ${interval}`;
}

/** What theory says, with as many digits as tell something beside the estimate. */
export function expectedText(
  measure: Watched,
  estimate: Estimate | null,
  expected: number | undefined,
): string {
  if (expected === undefined) return NONE;
  const rows = [
    { estimate: estimate ?? { value: expected, lower: null, upper: null, level: 0, runs: 0, method: '' } },
  ];
  return formatOf({ measure, rows }).value(expected);
}

/** What was measured at one setting. */
export function measuresTable(watched: readonly Watched[], runs: readonly Values[]): string {
  const rows = watched.map((measure, i) =>
    row(unitOf(measure), estimateCells(measure, estimateOf(runs, i, measure))),
  );
  const caption = `What ${counted(runs.length, 'run')} gave <span>(mean, and where it lies with 95 % confidence)</span>`;
  const heads = heading('measure') + heading('mean') + heading('95 % interval');
  return scrolling('table-measures', caption, heads, rows);
}

/** Estimates of the first measure after so many runs, from the second on. */
export const growing = (measure: Watched, runs: readonly Values[]): Estimate[] =>
  runs.flatMap((_, i) => (i === 0 ? [] : (estimateOf(runs.slice(0, i + 1), 0, measure) ?? [])));

/** The chart as numbers, at every few runs. */
export function growingTable(measure: Watched, estimates: readonly Estimate[]): string {
  const last = estimates.at(-1)?.runs ?? 0;
  const shown = estimates.filter(({ runs }) => runs === 2 || runs === last || runs % 5 === 0);
  const format = formatOf({ measure, rows: shown.slice(-1).map((estimate) => ({ estimate })) });
  const rows = shown.map((estimate) => {
    const { value, lower, upper, runs } = estimate;
    const half = lower === null || upper === null ? NONE : format.value((upper - lower) / 2);
    return row(String(runs), [format.value(value), format.interval(estimate), half]);
  });
  const heads = heading('runs') + heading('mean') + heading('95 % interval') + heading('half of its width');
  return scrolling(
    'table-growing',
    `${escapeHtml(unitOf(measure))} <span>after so many runs</span>`,
    heads,
    rows,
  );
}

const knobHeads = ({ knobs }: Exercise) => knobs.map(({ name }) => heading(name)).join('');
const knobCells = ({ knobs }: Exercise, { setting }: Tried) =>
  knobs.map((knob) => {
    const text = escapeHtml(valueText(knob, setting[knob.name]!));
    return knob.kind === 'number' ? `<td>${text}</td>` : `<td class="chosen">${text}</td>`;
  });

const triedHeads = (exercise: Exercise, watched: readonly Watched[]) =>
  [
    ...[heading('setting'), knobHeads(exercise), heading('runs')],
    ...watched.map((measure) => heading(unitOf(measure))),
  ].join('');

const TRIED_CAPTION = 'Mean at each setting, and below it its 95 % interval';

/** Rows of the table of settings for who works on paper. */
const BY_HAND = 6;

/** The same table, to be filled in by hand. */
export function triedByHand(exercise: Exercise): string {
  const watched = watchedOf(scenarioAt(exercise, startOf(exercise)), exercise.watch);
  const empty = Array<string>(exercise.knobs.length + 1 + watched.length).fill('');
  const rows = Array.from({ length: BY_HAND }, (_, i) => row(String(i + 1), empty));
  return scrolling('table-by-hand', TRIED_CAPTION, triedHeads(exercise, watched), rows);
}

/** All settings that were tried, with the means and below them their intervals. */
export function triedTable(exercise: Exercise, tried: readonly Tried[], watched: readonly Watched[]): string {
  const rows = tried.map((one, number) => {
    const cells = watched.map((measure, i) => {
      if (one.failure !== null) return cellOf(NONE);
      const [mean, interval] = estimateCells(measure, estimateOf(one.runs, i, measure));
      return `<td>${escapeHtml(mean)}<br><span>${escapeHtml(interval)}</span></td>`;
    });
    const runs = one.failure === null ? String(one.runs.length) : 'the line failed';
    const head = [...knobCells(exercise, one), cellOf(runs)];
    return rowOf(String(number + 1), [...head, ...cells]);
  });
  return scrolling('table-tried', TRIED_CAPTION, triedHeads(exercise, watched), rows);
}

function wordOf({ lower, upper }: Estimate): string {
  if (lower === null || upper === null) return 'one run tells nothing';
  if (lower === 0 && upper === 0) return 'the same in every run';
  if (lower > 0) return 'more';
  return upper < 0 ? 'less' : 'cannot be told apart';
}

/** Two settings to be compared, by their numbers in the table. */
interface Pair {
  readonly one: Tried;
  readonly other: Tried;
  readonly names: readonly [number, number];
}

const differencesOf = (watched: readonly Watched[], { one, other }: Pair) =>
  watched.map((measure, i) => ({
    measure,
    difference: differenceOf(one.runs, other.runs, { i, comparisons: watched.length }),
  }));

/** `Setting 2 against setting 1: throughput more, lead time cannot be told apart.` */
export function differenceText(watched: readonly Watched[], pair: Pair): string {
  const told = differencesOf(watched, pair).map(
    ({ measure, difference }) => `${measure.name} ${difference === null ? 'no value' : wordOf(difference)}`,
  );
  return `Setting ${pair.names[0]} against setting ${pair.names[1]}: ${told.join(', ')}.`;
}

/** What one setting gives more than another, run by run under the same seed. */
export function differenceTable(watched: readonly Watched[], pair: Pair): string {
  const { names } = pair;
  const rows = differencesOf(watched, pair).map(({ measure, difference }) => {
    if (difference === null) return row(measure.name, [NONE, NONE, NONE]);
    const format = formatOf({ measure, rows: [{ estimate: difference, difference }] });
    const name = `${measure.name}, ${format.differenceUnit}`;
    return row(name, [format.signed(difference.value), format.interval(difference), wordOf(difference)]);
  });
  const caption = `Setting ${names[0]} against setting ${names[1]} <span>(differences of runs under the same seed; the intervals hold together at 95 %)</span>`;
  const heads = heading('measure') + heading('difference') + heading('its interval') + heading('in words');
  return scrolling('table-difference', caption, heads, rows);
}

/** What theory expects beside what the runs gave, setting by setting. */
export function theoryTable(exercise: Exercise, { tried }: Attempt): string {
  const sound = tried.flatMap((one, number) => (one.failure === null ? [{ one, number }] : []));
  const rows = sound.flatMap(({ one, number }) => {
    const expected = expectedAt(exercise, one.setting);
    const watched = watchedOf(scenarioAt(exercise, one.setting), exercise.watch);
    return watched.map((measure, i) => {
      const estimate = estimateOf(one.runs, i, measure);
      const [mean, interval] = estimateCells(measure, estimate);
      return row(`${number + 1}: ${unitOf(measure)}`, [
        expectedText(measure, estimate, expected?.[measure.name]),
        mean,
        interval,
      ]);
    });
  });
  const heads =
    heading('setting and measure') + heading('theory') + heading('mean of runs') + heading('95 % interval');
  return scrolling(
    'table-theory',
    `What theory expects <span>(${NONE}: it expects nothing here)</span>`,
    heads,
    rows,
  );
}

/** What was predicted beside what holds. */
export function predictionsTable(exercise: Exercise, { predictions, tried }: Attempt): string {
  const rows = exercise.predictions.map((prediction, i) => {
    const written = predictions[i] ?? '';
    if (prediction.kind === 'choice') return row(prediction.asks, [written, prediction.right]);
    const [measure] = watchedOf(scenarioAt(exercise, prediction.setting), [prediction.of]);
    const expected = expectedAt(exercise, prediction.setting)?.[prediction.of];
    const same = tried.find(
      ({ setting, failure }) => failure === null && sameSetting(exercise, setting, prediction.setting),
    );
    const estimate = same ? estimateOf(same.runs, exercise.watch.indexOf(prediction.of), measure!) : null;
    const { unit } = measure!.shown;
    const answer =
      expected !== undefined
        ? `${expectedText(measure!, estimate, expected)} ${unit}`
        : estimate
          ? `${estimateCells(measure!, estimate).join(' (')}) ${unit}`
          : 'turn the knobs there and run it';
    return row(prediction.asks, [`${written} ${unit}`, answer]);
  });
  const heads = heading('question') + heading('predicted') + heading('holds');
  return scrolling('table-predictions', 'Predicted, and what holds', heads, rows);
}
