import { GROUPS } from './cases/index.ts';

const cases = new Map(GROUPS.flatMap((group) => group.cases).map((it) => [it.id, it]));

/** Some experiments of a case. */
export interface Batch {
  readonly id: string;
  /** Numbers of the first experiment and of the one behind the last. */
  readonly from: number;
  readonly to: number;
}

/** In how many of them what is counted came about. */
export default function run({ id, from, to }: Batch): number {
  const { experiment } = cases.get(id)!;
  let hits = 0;
  for (let number = from; number < to; number++) if (experiment(number)) hits++;
  return hits;
}
