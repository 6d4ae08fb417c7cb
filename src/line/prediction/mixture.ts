import { correlationMatrix, type Lean } from '../../scenario/correlations.ts';
import { mixingMatrix } from '../../statistics/mixing.ts';
import type { Source } from './source.ts';

/** One of the dimensions that may vary together, and its standard deviation, mm. */
interface Varying {
  readonly dimension: string;
  /** As correlations name it. */
  readonly name: string;
  readonly sd: number;
}

/** Sources called `name` of dimensions that vary together as `leans` say, each source by the Cholesky factor of their matrix. */
export function mixedSources(name: string, varying: readonly Varying[], leans: readonly Lean[]): Source[] {
  const names = varying.map((it) => it.name);
  const weights = mixingMatrix(correlationMatrix(names, leans))!;
  return varying.map((_, j) => ({
    name,
    of: new Map(
      varying.flatMap(({ dimension, sd }, i) => {
        const weight = weights[i]![j]! * sd;
        return weight === 0 ? [] : [[dimension, weight] as const];
      }),
    ),
  }));
}

/** A kind of variation that dimensions may share, as correlations give it. */
type Kind = 'own' | 'sheet' | 'lot';

/** The pairs that are correlated in one kind of variation. */
export function leansOf<Of extends { readonly of: readonly [string, string] }>(
  kind: Kind & keyof Of,
  correlations: readonly Of[] = [],
): Lean[] {
  return correlations.map(({ of, [kind]: by }) => ({ of, by: by as number }));
}
