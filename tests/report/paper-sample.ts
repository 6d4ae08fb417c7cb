import { compare } from '../../src/experiment/comparison.ts';
import type { MeasureKey } from '../../src/line/measures.ts';
import { type Paper, paperOf } from '../../src/report/paper-tables.ts';
import { outcome } from './fake.ts';
import { ORIGIN } from './origin-sample.ts';
import { sampleTwins } from './twins-sample.ts';

/** Every sign that means something in LaTeX or Markdown, and some that end a row or a cell. */
export const HOSTILE = '[x] \\y{z} $1 & #2 _3_ %4 ^5 ~6 <b> |7| *8* "9" `10` -- \u2026\nnew';

/** A comparison of two policies, the second of them with a hostile name. */
export function samplePaper(twinned = false, worth: ReadonlyMap<MeasureKey, number> = new Map()): Paper {
  const outcomes = [1, 2, 3].flatMap((seed) => [
    outcome('- hold', seed, { throughput_per_h: 40 + seed, scrap_rate: 0.1 }),
    outcome(HOSTILE, seed, { throughput_per_h: 30 + seed * seed, scrap_rate: 0.1 - seed / 100 }),
  ]);
  const twins = twinned ? sampleTwins(2) : undefined;
  const names = twins ? twins.curves.map(({ policy }) => policy) : ['- hold', HOSTILE];
  const own = twins ? outcomes.map((one, i) => ({ ...one, policy: names[i % 2]! })) : outcomes;
  return paperOf(compare(names, own, null, worth), twins, { title: 'A <cell> & more', origin: ORIGIN });
}
