import { besideBest } from '../../../../src/statistics/comparing/best.ts';
import { decide } from '../../../../src/statistics/comparing/decision.ts';
import {
  againstFirst,
  allPairs,
  decidePairs,
  type Pair,
} from '../../../../src/statistics/comparing/pairs.ts';
import { type Calibration, drawn, holds, LEVEL, type Luck, times } from '../calibration.ts';

const HSU = 'J. C. Hsu (1984), Ann. Stat. 12, 1136-1144, by Bonferroni: no less often than stated';
const BONFERRONI = 'C. E. Bonferroni (1936): no more often than stated';
const HOLM = 'S. Holm (1979), Scand. J. Stat. 6, 65-70: no more often than stated';

/** Whether the systems of one seed share luck. */
const HOW = ['independent', 'common luck'] as const;
type How = (typeof HOW)[number];

/** Values by system and run. */
function valuesOf(means: readonly number[], runs: number, how: How, { normal }: Luck): number[][] {
  const shared = times(runs, () => (how === 'common luck' ? 2 * normal() : 0));
  return means.map((mean, system) => shared.map((luck) => mean + luck + (1 + system / 2) * normal()));
}

const best = (how: How, means: readonly number[], which: string): Calibration =>
  drawn({
    id: `best, ${which}, ${how}`,
    what: `all intervals beside the best of ${means.length} ${which}, together, 10 runs, ${how}`,
    ...{ source: HSU, exact: 'each mean less the best of the others', claim: 'at least' },
    experiment: (luck) =>
      besideBest(valuesOf(means, 10, how, luck), LEVEL, 'higher').every(({ difference }, system) => {
        const others = means.filter((_, other) => other !== system);
        return holds(difference, means[system]! - Math.max(...others));
      }),
  });

const PAIRS = { 'against the first': againstFirst, 'all pairs': allPairs } as const;
type Which = keyof typeof PAIRS;
const SYSTEMS = 4;

/** Equal systems: whatever is called different is not. */
const equal = (
  id: string,
  what: string,
  source: string,
  which: Which,
  how: How,
  wrong: (pair: Pair) => boolean,
): Calibration =>
  drawn({
    id: `${id}, ${which}, ${how}`,
    what: `${what}: any of ${SYSTEMS} equal systems called different, ${which}, 10 runs, ${how}`,
    ...{ source, exact: 'no difference', claim: 'at most', stated: 1 - LEVEL },
    experiment: (luck) => {
      const values = valuesOf(Array<number>(SYSTEMS).fill(0), 10, how, luck);
      return decidePairs(values, PAIRS[which](SYSTEMS), { better: 'higher', worth: 0, level: LEVEL }).some(
        wrong,
      );
    },
  });

const families: readonly Calibration[] = HOW.flatMap((how) =>
  (Object.keys(PAIRS) as Which[]).flatMap((which) => [
    equal('Bonferroni', 'better or worse', BONFERRONI, which, how, ({ decision: { surely } }) => !!surely),
    equal('Holm', 'adjusted chances', HOLM, which, how, ({ chance }) => chance <= 1 - LEVEL),
  ]),
);

const WORTH = 0.5;

/** A difference of `mean`, of 12 runs, and the words that would be wrong. */
const word = (
  id: string,
  what: string,
  mean: number,
  spread: number,
  wrong: readonly string[],
): Calibration =>
  drawn({
    id: `word, ${id}`,
    what: `wrong word for ${what}, ${WORTH} being worth having, 12 runs: ${wrong.join(' or ')}`,
    source:
      'follows from the t interval; the word for a small difference D. J. Schuirmann (1987), at half the error',
    ...{ exact: `${mean}`, claim: 'at most', stated: 1 - LEVEL },
    experiment: ({ normal }) => {
      const differences = times(12, () => mean + spread * normal());
      return wrong.includes(decide(differences, { better: 'higher', worth: WORTH, level: LEVEL }).word);
    },
  });

const words: readonly Calibration[] = [
  word('just worth having', 'a difference of just what is worth having', WORTH, 1, ['better', 'worse']),
  word('a trifle more', 'a difference of a trifle more, told sharply', WORTH + 1e-9, 0.2, [
    'no difference worth having',
    'worse',
  ]),
];

/** What is said of several systems at once, on plain draws. */
export const TOGETHER: readonly Calibration[] = [
  ...HOW.flatMap((how) => [
    // Of equal systems every interval holds zero by construction; far ahead, each statement about the best is put to the test.
    best(how, [0, 0, 0, 20], 'systems, one far ahead'),
    best(how, [0, 0.2, 0.4, 0.5], 'slightly different systems'),
  ]),
  ...families,
  ...words,
];
