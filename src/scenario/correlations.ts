import { z } from 'zod';
import { entry, name } from './fields.ts';

const LEAN = 'expected a number from -1 to 1, such as 0.6';
const lean = z.number({ error: LEAN }).min(-1, { error: LEAN }).max(1, { error: LEAN }).default(0);
const PAIR = 'expected two features, such as [rim, tab]';
const LIST = 'expected a list of correlations, such as [{ of: [rim, tab], own: 0.6 }]';

const of = z.tuple([name, name], { error: PAIR }).describe('two features');
const lot = lean.describe('correlation of what a whole delivery shares');

/** How features of one part vary together; what is not said is 0. */
export const partCorrelations = z
  .array(
    entry({
      of,
      own: lean.describe('correlation of what each part adds'),
      sheet: lean.describe('correlation of what parts from one sheet share'),
      lot,
    }),
    { error: LIST },
  )
  .optional();

/** How features of one mate vary together. */
export const mateCorrelations = z
  .array(entry({ of, own: lean.describe('correlation of what each piece adds'), lot }), { error: LIST })
  .optional();

/** One pair with the correlation of one kind of variation. */
export interface Lean {
  readonly of: readonly [string, string];
  readonly by: number;
}

/** The correlation matrix of `names`, in their order: ones on the diagonal, 0 for pairs not named. */
export function correlationMatrix(names: readonly string[], leans: readonly Lean[]): number[][] {
  const matrix: number[][] = names.map((_, i) => names.map((__, j) => (i === j ? 1 : 0)));
  for (const { of, by } of leans) {
    const [i, j] = [names.indexOf(of[0]), names.indexOf(of[1])];
    matrix[i]![j] = by;
    matrix[j]![i] = by;
  }
  return matrix;
}
