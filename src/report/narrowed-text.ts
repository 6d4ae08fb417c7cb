import { LEVEL } from '../experiment/comparison.ts';
import type { Narrowed } from '../experiment/narrow.ts';
import { MOST_SEEDS } from '../scenario/limits.ts';
import { percentLevel } from './cells.ts';
import { decimalsFor, fixed } from './format.ts';
import { counted, listed } from './words.ts';

/** How many runs the width took, whether it was reached, and what it holds for; in sentences. */
export function narrowedSentences({ measure, half, firstStage, seeds, rows }: Narrowed): string[] {
  const { factor, unit } = measure.shown;
  const decimals = Math.max(0, decimalsFor(half * factor) + 1);
  const width = `\u00b1${Number((half * factor).toPrecision(10))} ${unit === '%' ? 'percentage points' : unit}`;
  const share = `${percentLevel(LEVEL)} %`;
  const told = (value: number) => fixed(value * factor, decimals);
  const ready = rows.filter(({ needed }) => needed <= seeds);
  const missing = rows.filter(({ needed }) => needed > seeds);
  const most = Math.max(...rows.map(({ needed }) => needed));
  const means = ready.map(({ policy, estimate }) => `${policy} ${told(estimate.value)}`);
  const held =
    ready.length === 0
      ? []
      : [
          `To within ${width} at ${share}, each by itself, the mean ${measure.name} is: ${listed(means)}; by ` +
            `${counted(seeds, 'run')} of each policy.`,
        ];
  const open =
    missing.length === 0
      ? []
      : [
          `Not narrow enough by the ${counted(seeds, 'run')} that --at-most allowed: ${width} in ${measure.name} takes ` +
            `${listed(missing.map(({ policy, needed }) => `${needed} runs of ${policy}`))}${most <= MOST_SEEDS ? `; --at-most ${most} is enough` : ', which are too many'}.`,
        ];
  return [
    ...held,
    ...open,
    `How many runs it takes follows from the spread of the first ${firstStage} (Stein 1945), values being taken as normal. The ` +
      'intervals of the tables are those of so many runs planned ahead.',
  ];
}
