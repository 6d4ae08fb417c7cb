import { z } from 'zod';
import { count, entry, name } from '../fields.ts';
import { always } from '../in-force.ts';

export const inspect = entry({
  do: z.literal('inspect'),
  at: name.describe('a gauging station'),
  every: count(1),
  'off-limits': name.optional().describe('pass, scrap or a rework station; left out, as the station says'),
  ...always,
});
