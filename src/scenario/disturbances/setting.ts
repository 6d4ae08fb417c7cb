import { z } from 'zod';
import { entry, name } from '../fields.ts';
import { changeOfSetting } from './size.ts';
import { building, comes, timing } from './timing.ts';

/** A forming setting moves. */
export const setting = entry({
  disturbs: z.literal('setting'),
  setting: name.describe('the forming setting that moves'),
  by: changeOfSetting.describe('change of the actual setting while the target stays'),
  ...building,
  ...timing,
}).superRefine(comes);
