import { z } from 'zod';
import { sheetTime as lawOf, type SheetTime } from '../../standards/sheet-heating.ts';
import { duration, entry, positiveLength, ratio, word } from '../fields.ts';

const perLength = ratio('time', '16 s/mm')
  .refine(({ per }) => per === 'length', {
    error: 'expected a time per length, such as 16 s/mm',
    abort: true,
  })
  .transform(({ value }): SheetTime => ({ factor: value, power: 1 }));

/** A time that depends on the thickness of the sheet; `what` names it in messages. */
export const sheetTime = (what: 'heating' | 'cooling') =>
  z.union([
    entry({
      sheet: positiveLength.describe('a thickness of sheet'),
      takes: duration.describe('the time for a sheet so thick'),
      grows: word(['by-thickness', 'by-square']).describe(
        'in proportion to the thickness, as for thin sheet (below about 1.5 mm), or to its square (above about 3 mm)',
      ),
    }).transform(({ sheet, takes, grows }) => lawOf(takes, sheet, grows === 'by-square' ? 2 : 1)),
    perLength.refine(({ factor }) => factor >= 0, { error: `${what} time cannot be negative` }),
  ]);
