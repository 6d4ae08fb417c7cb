import { z } from 'zod';
import { buffer } from '../buffers.ts';
import { count, entry, length, name, named, spread } from '../fields.ts';
import { operating } from './operating.ts';
import { reader } from './reader.ts';

export const gauge = entry({
  does: z.literal('gauge'),
  ...operating,
  buffer,
  every: count(1).describe('gauges one part in this many; the others pass in no time'),
  measures: named(entry({ bias: length.default(0), repeatability: spread })).describe('readings by feature'),
  'off-limits': name.describe('a part read outside its tolerance goes to: pass, scrap, or a rework station'),
  reader: reader.optional(),
});
