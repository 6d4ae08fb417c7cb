import { signOf } from '../../statistics/comparing/better.ts';
import { KimNelson, type Selected } from '../../statistics/selection/kim-nelson.ts';
import { type Allowance, allowanceOf } from './allowance.ts';
import type { SelectionSettings } from './settings.ts';
import type { How, LeftOut, Standing, Values } from './standing.ts';

const HOW: Readonly<Record<Selected['how'], How>> = {
  'one left': 'one left',
  'tied at the last stage': 'level',
  'most runs reached': 'most runs',
};

/** How the fully sequential procedure stands after these values; those beyond its end are not looked at. */
export function sequential(values: Values, settings: SelectionSettings): Standing {
  const { firstStage } = settings;
  const selection = new KimNelson({ systems: values.length, ...settings });
  const sign = signOf(settings.better);
  const sums = values.map(() => 0);
  const out: LeftOut[] = [];
  let allowance: ((one: number, other: number) => Allowance) | null = null;
  for (let run = 0; !selection.selected && selection.survivors.every((i) => run < values[i]!.length); run++) {
    const before = selection.survivors;
    for (const i of before) sums[i]! += sign * values[i]![run]!;
    selection.add(values.map((own) => own[run] ?? null));
    const runs = run + 1;
    if (runs === firstStage) allowance = allowanceOf(values, settings);
    for (const policy of before.filter((i) => !selection.survivors.includes(i)))
      out.push(leftOut(policy, before, { runs, sums, allowance: allowance! }));
  }
  const { selected, survivors: left, runs } = selection;
  return {
    ...{ runs, left, out, how: selected && HOW[selected.how], best: selected?.best ?? null },
    needed: allowance && Math.max(runs, latest(left, allowance)),
  };
}

interface Now {
  readonly runs: number;
  /** Of the values so far, more being better. */
  readonly sums: readonly number[];
  readonly allowance: (one: number, other: number) => Allowance;
}

function leftOut(policy: number, among: readonly number[], { runs, sums, allowance }: Now): LeftOut {
  const found = among
    .filter((i) => i !== policy)
    .map((by) => ({
      ...{ policy, runs, by, behind: (sums[by]! - sums[policy]!) / runs },
      allowed: allowance(policy, by).after(runs),
    }));
  return found.reduce((most, one) => (one.behind - one.allowed > most.behind - most.allowed ? one : most));
}

/** Runs after which none of those left may lie behind another. */
function latest(left: readonly number[], allowance: Now['allowance']): number {
  const pairs = left.flatMap((one) =>
    left.filter((other) => other > one).map((other) => [one, other] as const),
  );
  return Math.max(0, ...pairs.map(([one, other]) => allowance(one, other).last + 1));
}
