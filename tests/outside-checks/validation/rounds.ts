import type { Case } from '../cases/case.ts';
import { textHash } from '../text-hash.ts';
import { type Judgement, judge } from './judge.ts';

/** Runs of the first round, and of the second under seeds of its own. */
export const RUNS = 30;
export const AGAIN = 4 * RUNS;
/** Without chance every run is the same, and two show it. */
const EXACT_RUNS = 2;

/** Does one run of a case and says what it gave for each value. */
export type Runner = (of: Case, seed: number) => Promise<number[]>;

/** What came of one value: by the first round, or by the second if the first missed. */
export interface Verdict {
  readonly first: Judgement;
  readonly second: Judgement | null;
  readonly passed: boolean;
}

/** The seed before the first of a case. Cases do not share seeds, so that one stroke of luck does not show in all of them. */
const seedBefore = ({ id }: Case): number => textHash(id) * 1000;

async function seeds(of: Case, from: number, runs: number, run: Runner): Promise<number[][]> {
  return Promise.all(Array.from({ length: runs }, (_, i) => run(of, from + i)));
}

const passes = ({ hit, sharp }: Judgement): boolean => hit && sharp;

/**
 * Runs a case and judges its values. Of true values one in a hundred lies outside its own 99 % interval: a value that
 * does is judged again, once and for good, by four times the runs under fresh seeds.
 */
export async function validate(of: Case, run: Runner): Promise<Verdict[]> {
  const runs = of.values.every(({ exact }) => exact) ? EXACT_RUNS : RUNS;
  const before = seedBefore(of);
  const given = await seeds(of, before + 1, runs, run);
  const first = of.values.map((value, i) =>
    judge(
      value,
      given.map((one) => one[i]!),
    ),
  );
  const again = first.some(({ hit }) => !hit) ? await seeds(of, before + RUNS + 1, AGAIN, run) : [];
  return of.values.map((value, i) => {
    const second = first[i]!.hit
      ? null
      : judge(
          value,
          again.map((one) => one[i]!),
        );
    return { first: first[i]!, second, passed: passes(second ?? first[i]!) };
  });
}
