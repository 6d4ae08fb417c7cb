import { follow, noHistory, type RunRule, thresholdOf } from '../charts/run-rules.ts';
import type { ShewhartSpec } from '../charts/shewhart.ts';
import { normalShare } from '../normal.ts';

/** A range of values that every rule takes alike: one of them, and the chance of a point there. */
interface Zone {
  readonly value: number;
  readonly chance: number;
}

/** The zones within the limits, of points whose mean is off by `shift`. */
function zonesOf(limit: number, rules: readonly RunRule[], shift: number): Zone[] {
  const inner = [...new Set([0, ...rules.map(thresholdOf)])].filter((edge) => edge < limit);
  const edges = [...new Set([...inner, ...inner.map((edge) => -edge), limit, -limit])]
    .map((edge) => edge + 0)
    .sort((a, b) => a - b);
  return edges.slice(1).flatMap((to, i) => {
    const from = edges[i]!;
    return to > from
      ? [{ value: (from + to) / 2, chance: normalShare(to - shift) - normalShare(from - shift) }]
      : [];
  });
}

interface Step {
  readonly to: number;
  readonly chance: number;
}

/** For each history that the rules can have without a signal, the first being none, where the next point leads. */
function histories(rules: readonly RunRule[], zones: readonly Zone[]): Step[][] {
  const known = new Map<string, number>();
  const all: number[][] = [];
  const number = (history: number[]) => {
    const key = history.join();
    const found = known.get(key);
    if (found !== undefined) return found;
    known.set(key, all.length);
    return all.push(history) - 1;
  };
  number(noHistory(rules));
  const steps: Step[][] = [];
  // The list grows while it is gone through.
  for (const before of all) {
    steps.push(
      zones.flatMap(({ value, chance }) => {
        const after = [...before];
        return follow(rules, after, value) ? [] : [{ to: number(after), chance }];
      }),
    );
  }
  return steps;
}

/** How little the chance to go on may still change from point to point, as a ratio, once it has settled. */
const SETTLED = 1e-13;

/** By the Markov chain of the rules' histories: the sum over all points of the chance to get beyond them. */
function withRules({ limit, runRules }: ShewhartSpec, shift: number): number {
  const steps = histories(runRules, zonesOf(limit, runRules, shift));
  let now = new Float64Array(steps.length);
  now[0] = 1;
  let length = 0;
  let left = 1;
  let ratio = 0;
  for (let settled = 0; settled < 10 && left > Number.MIN_VALUE; ) {
    length += left;
    const next = new Float64Array(steps.length);
    for (const [i, own] of steps.entries()) for (const { to, chance } of own) next[to]! += now[i]! * chance;
    const remaining = next.reduce((sum, chance) => sum + chance, 0);
    settled = Math.abs(remaining / left - ratio) <= SETTLED ? settled + 1 : 0;
    ratio = remaining / left;
    left = remaining;
    now = next;
  }
  return length + left / (1 - ratio);
}

/**
 * The mean number of points to a signal of a Shewhart chart of independent normal points whose mean is off by `shift`
 * sigmas: geometric without run rules; with them by C. W. Champ and W. H. Woodall (1987), Technometrics 29, 393-399.
 */
export function shewhartRunLength(spec: ShewhartSpec, shift: number): number {
  if (spec.runRules.length > 0) return withRules(spec, shift);
  return 1 / (normalShare(shift - spec.limit) + normalShare(-shift - spec.limit));
}
