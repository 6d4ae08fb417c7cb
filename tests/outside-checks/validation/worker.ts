import { GROUPS } from '../cases/index.ts';

const cases = new Map(GROUPS.flatMap((group) => group.cases).map((it) => [it.id, it]));

/** One run of a case of the validation. */
export default function run({ id, seed }: { readonly id: string; readonly seed: number }): number[] {
  const { length, run } = cases.get(id)!;
  return run(length, seed);
}
