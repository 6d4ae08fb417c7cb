import type { z } from 'zod';
import { count, entry, length, name } from '../fields.ts';
import { type Bounds, bounds, boundsOf } from './bounds.ts';

/** The newest reading of a feature at a gauge, or the mean of the newest so many. */
export const readingLevel = entry({
  at: name.describe('a gauging station'),
  of: name.describe('the feature whose readings there it follows'),
  ...bounds(length),
  'mean-of': count(1).default(1).describe('goes by the mean of so many readings at a time'),
}).transform(
  (given, context): { readonly at: string; readonly of: string; readonly meanOf: number } & Bounds => ({
    at: given.at,
    of: given.of,
    meanOf: given.meanOf,
    ...boundsOf(given, context),
  }),
);

export type ReadingCondition = z.output<typeof readingLevel>;
