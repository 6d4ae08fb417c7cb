import { z } from 'zod';
import { count, entry, name, named } from '../fields.ts';
import { setting } from '../forming/setting.ts';
import { sheetTime } from '../forming/sheet-time.ts';
import { wall } from '../forming/wall.ts';
import { formingWindow } from '../forming/window.ts';
import { operating } from './operating.ts';

export const form = entry({
  does: z.literal('form'),
  ...operating,
  takes: name.describe('the stock of sheet'),
  makes: name.describe('the kind of part'),
  'per-sheet': count(1).describe('parts from one sheet'),
  heating: sheetTime('heating')
    .optional()
    .describe('heating time per mm of sheet thickness, or how it grows; added to the cycle'),
  cooling: sheetTime('cooling').optional().describe('cooling time, likewise'),
  settings: named(setting).optional(),
  window: formingWindow.optional().describe('outside which parts are incomplete or webbed'),
  wall: wall.optional().describe('mean wall thickness, from the sheet and how far it is drawn'),
});
