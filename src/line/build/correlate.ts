import { correlationMatrix } from '../../scenario/correlations.ts';
import type { PartSpec } from '../../scenario/parts.ts';
import type { StockSpec } from '../../scenario/stocks.ts';
import { mixingMatrix } from '../../statistics/mixing.ts';
import type { FromSheet } from '../from-sheet.ts';
import type { Line } from '../line.ts';
import type { Ingredient } from '../mixed.ts';
import type { Variation } from '../variation.ts';

interface Mixable<Self> {
  madeOf(mix: readonly Ingredient<Self>[]): void;
}

interface Correlation {
  readonly of: readonly [string, string];
  readonly own: number;
  readonly sheet?: number;
  readonly lot: number;
}

/** How draws are mixed for one kind of variation; null where nothing of that kind is correlated. */
function mixing(
  names: readonly string[],
  given: readonly Correlation[],
  kind: 'own' | 'sheet' | 'lot',
): number[][] | null {
  const leans = given.flatMap(({ of, ...by }) => (by[kind] ? [{ of, by: by[kind] }] : []));
  return leans.length > 0 ? mixingMatrix(correlationMatrix(names, leans)) : null;
}

/** Lets `draws`, which are drawn in their order, be mixed by the rows of a matrix; what does not vary is null. */
function mix<Of extends Mixable<Of>>(draws: readonly (Of | null)[], matrix: number[][] | null): void {
  for (const [i, row] of (matrix ?? []).entries()) {
    const made = row.flatMap((weight, j) => {
      const draw = draws[j];
      return weight !== 0 && draw ? [{ draw, weight }] : [];
    });
    if (made.length > 1) draws[i]!.madeOf(made);
    else if (made.length === 1 && made[0]!.draw !== draws[i]) draws[i]!.madeOf(made);
  }
}

/** Lets the features of the part vary together as the scenario says. */
export function correlateFeatures({ features: specs, correlations }: PartSpec, line: Line): void {
  if (!correlations) return;
  const names = specs.map(({ name }) => name);
  const features = names.map((name) => line.features.get(name)!);
  const own = mixing(names, correlations, 'own');
  if (own) {
    // The columns hold draws times their standard deviations.
    const weights = own.map((row, i) =>
      row.map((weight, j) => (weight === 0 ? 0 : (weight * specs[i]!.ownSd) / (specs[j]!.ownSd || 1))),
    );
    line.parts.mix(
      features.map(({ truth }) => truth),
      weights,
    );
  }
  mix(
    features.map(({ sheet }) => sheet),
    mixing(names, correlations, 'sheet'),
  );
  correlateLots(
    { features: specs, correlations },
    features.map(({ standard }) => standard),
  );
}

/** Lets what features have of the deliveries of one sheet vary together; in the order of the part's features. */
export function correlateLots(
  { features, correlations }: Pick<PartSpec, 'features' | 'correlations'>,
  sheet: readonly FromSheet[],
): void {
  if (!correlations) return;
  const names = features.map(({ name }) => name);
  mix(
    sheet.map(({ lots }) => lots?.lots ?? null),
    mixing(names, correlations, 'lot'),
  );
}

/** Lets the features of a mate vary together; `variations` in the order of the features. */
export function correlateMate(
  { features = [], correlations }: StockSpec,
  variations: readonly Variation[],
): void {
  if (!correlations) return;
  const names = features.map(({ name }) => name);
  mix(
    variations.map(({ pieces }) => pieces),
    mixing(names, correlations, 'own'),
  );
  mix(
    variations.map(({ lots }) => lots),
    mixing(names, correlations, 'lot'),
  );
}
