import type { z } from 'zod';
import { count, entry, name } from '../fields.ts';
import { type Bounds, bounds, boundsOf } from './bounds.ts';

/** Parts in front of a station, those on their way on a conveyor to it included. */
export const bufferLevel = entry({
  buffer: name.describe('a station: how many parts wait in front of it, or travel to it on its conveyor'),
  ...bounds(count(0), count(1)),
}).transform((given, context): { readonly buffer: string } & Bounds => ({
  buffer: given.buffer,
  ...boundsOf(given, context),
}));

export type BufferCondition = z.output<typeof bufferLevel>;
