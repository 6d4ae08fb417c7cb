import type { Levels, Looked } from '../experiment/looked.ts';
import { escapeHtml } from './escape.ts';
import { fixed } from './format.ts';
import { heading, scrolling, section } from './html.ts';
import { lanesChart } from './lanes.ts';
import { timeUnit } from './twin-charts.ts';
import { counted } from './words.ts';

export const UNITS = { stock: 'pieces on hand', buffer: 'parts waiting in front of it' } as const;
const level = (value: number): string => fixed(value, 1);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** What is told of a curve: where it begins, its mean, its lowest and highest, and where it ends. */
const TOLD: readonly (readonly [string, (means: readonly number[]) => number])[] = [
  ['at first', (means) => means[0]!],
  ['mean', mean],
  ['lowest', (means) => Math.min(...means)],
  ['highest', (means) => Math.max(...means)],
  ['at last', (means) => means.at(-1)!],
];

const topOf = ({ rows }: Levels) => Math.max(...rows.flatMap(({ means }) => means));

/** A lane for each policy: the level over time. */
export function levelsChart(levels: Levels, times: readonly number[]): string {
  const { name, kind, rows } = levels;
  const { unit, size } = timeUnit(times.at(-1)!);
  const told = rows.map(({ policy, means }) => {
    const numbers = TOLD.map(([word, of]) => `${word} ${level(of(means))}`);
    return `${policy}: ${numbers.join(', ')}`;
  });
  return lanesChart({
    ...{ kind: 'levels', label: `${unit} since the start of the run`, curve: 'linear' },
    told: `${name}, ${UNITS[kind]}, mean over the runs. ${told.join('; ')}.`,
    domain: [times[0]! / size, times.at(-1)! / size],
    top: Math.max(topOf(levels), Number.MIN_VALUE),
    lanes: rows.map(({ policy, means }) => ({
      name: policy,
      points: means.map((height, i) => ({ x: times[i]! / size, height })),
    })),
  });
}

function table({ name, kind, rows }: Levels, index: number): string {
  const cells = rows.map(
    ({ policy, means }) =>
      `<tr><th scope="row">${escapeHtml(policy)}</th>${TOLD.map(([, of]) => `<td>${level(of(means))}</td>`).join('')}</tr>`,
  );
  const head = heading('policy') + TOLD.map(([word]) => heading(word)).join('');
  const caption = `${escapeHtml(name)} <span>(${UNITS[kind]}, of the mean over the runs, at the moments drawn)</span>`;
  return scrolling(`levels-${index + 1}`, caption, head, cells);
}

function figure(levels: Levels, times: readonly number[]): string {
  const { name, kind } = levels;
  const caption = `${escapeHtml(name)} <span>(${UNITS[kind]}; a full lane is ${level(topOf(levels))})</span>`;
  return `<figure><figcaption>${caption}</figcaption>${levelsChart(levels, times)}</figure>`;
}

/** How the levels of limited stocks and buffers went; nothing where there are none. */
export function levelsSection({ seeds, times, levels }: Looked): string {
  if (levels.length === 0) return '';
  const body = [
    '<p class="note">A lane for each policy, by the same scale within a picture. Each point is the mean of what there was at ' +
      `that moment in ${counted(seeds, 'run')}: where stocks run out at other times in each, the mean does not come to zero. ` +
      'Stocks and buffers without a limit are left out.</p>',
    `<div class="panels">\n${levels.map((own) => figure(own, times)).join('\n')}\n</div>`,
    `<details>\n<summary>The same as tables</summary>\n${levels.map(table).join('\n')}\n</details>`,
  ];
  return section('levels', 'Stocks and buffers over time', body.join('\n'));
}
