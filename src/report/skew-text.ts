import type { Skew } from '../experiment/skew.ts';
import { counted, listed, listedNames } from './words.ts';

/** So many measures, and policies of each, are named at the terminal; the page and the JSON tell of all. */
const NAMED = 3;
const NAMED_POLICIES = 2;

const doubtful = {
  mean: ({ mean }: Skew) => mean.doubtful,
  difference: ({ difference }: Skew) => difference?.doubtful === true,
} as const;

/** The policies whose mean, or whose difference, is doubtful. */
const policiesOf = (skews: readonly Skew[], which: keyof typeof doubtful): string[] =>
  skews.filter(doubtful[which]).map(({ policy }) => policy);

const askedFor = (skews: readonly Skew[]): number =>
  Math.max(
    ...skews.flatMap((skew) =>
      [skew.mean, skew.difference].flatMap((found) => (found?.doubtful ? found.runs : [])),
    ),
  );

/** `mean of a and b; difference of b`; a number where there are more policies than are to be named. */
function named(skews: readonly Skew[], most: number): string {
  return (['mean', 'difference'] as const)
    .flatMap((which) => {
      const policies = policiesOf(skews, which);
      if (policies.length === 0) return [];
      return [
        `${which} of ${policies.length > most ? `${policies.length} policies` : listedNames(policies)}`,
      ];
    })
    .join('; ');
}

/** The doubtful ones by measure, in the order of the measures. */
function byMeasure(skews: readonly Skew[]): Map<string, Skew[]> {
  const found = new Map<string, Skew[]>();
  for (const skew of skews) {
    if (!doubtful.mean(skew) && !doubtful.difference(skew)) continue;
    const { name } = skew.measure;
    found.set(name, [...(found.get(name) ?? []), skew]);
  }
  return found;
}

/** Which intervals are doubtful since the runs are skewed and few, in one sentence; nothing where none is. */
export function skewText(skews: readonly Skew[]): string[] {
  const found = byMeasure(skews);
  if (found.size === 0) return [];
  const all = [...found].map(([measure, own]) => `${measure} (${named(own, NAMED_POLICIES)})`);
  const rest = all.length - NAMED;
  const told = [...all.slice(0, NAMED), ...(rest > 0 ? [counted(rest, 'more measure')] : [])];
  return [
    `Skewed runs, and too few for it, so that intervals may miss more often than they say: ${listed(told)}. ` +
      `Cochran's rule asks for ${askedFor([...found.values()].flat())} runs.`,
  ];
}

/** The same of one measure, for the notes of its table. */
export function skewNotes(skews: readonly Skew[], key: string): string[] {
  const own = skews.filter((skew) => skew.measure.key === key);
  const [found] = byMeasure(own).values();
  if (found === undefined) return [];
  return [
    `The runs are skewed, and too few for it, so that these intervals may miss more often than they say: ${named(found, found.length)}. ` +
      `Cochran's rule asks for ${askedFor(found)} runs; medians and bad runs do not depend on it.`,
  ];
}
