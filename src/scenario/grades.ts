import { z } from 'zod';
import { SYMBOL_SIZES, type SymbolSize } from '../standards/data-matrix.ts';
import { GRADES } from '../standards/mark-grade.ts';
import { entry, share, word } from './fields.ts';

/** A number for each grade of a mark, in the order of `GRADES`. */
export type ByGrade = readonly number[];

/** Shares are written in decimal and added in binary. */
const TOLERANCE = 1e-9;

/** The shares of the grades among marks that took. */
export const gradeShares = entry({
  A: share.default(0),
  B: share.default(0),
  C: share.default(0),
  D: share.default(0),
  F: share.default(0),
}).transform((given, context): ByGrade => {
  const shares = GRADES.map((grade) => given[grade]);
  const sum = shares.reduce((all, one) => all + one, 0);
  if (Math.abs(sum - 1) <= TOLERANCE) return shares;
  context.addIssue({
    code: 'custom',
    message: `the shares sum to ${Number((100 * sum).toPrecision(10))} %; every mark that took has a grade, so they must sum to 100 %`,
  });
  return z.NEVER;
});

/** One share for marks of every grade, or one for each, of which that of F may be left out. */
export function shareByGrade(ofF: number) {
  const each = entry({ A: share, B: share, C: share, D: share, F: share.default(ofF) });
  return z.union([
    each.transform((given): ByGrade => GRADES.map((grade) => given[grade])),
    share.transform((one): ByGrade => GRADES.map(() => one)),
  ]);
}

/** Each symbol by its word in the file. */
const SYMBOLS = new Map(SYMBOL_SIZES.map((size) => [`data-matrix ${size}`, size]));

/** The kind and size of a symbol. */
export const symbol = word([...SYMBOLS.keys()] as [string, ...string[]]).transform(
  (given): SymbolSize => SYMBOLS.get(given)!,
);
