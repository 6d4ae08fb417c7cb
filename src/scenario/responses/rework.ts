import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { always } from '../in-force.ts';

export const rework = entry({
  do: z.literal('rework'),
  at: name.describe('the gauging or assembling station whose rejects are sent'),
  bench: name.describe('the rework station they are sent to'),
  ...always,
});
