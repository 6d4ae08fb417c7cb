import { z } from 'zod';
import { entry, kinds, measured, name, positiveDuration, share, word } from './fields.ts';
import { gradeShares } from './grades.ts';
import { time } from './laws.ts';

const when = {
  at: time.describe('when it first begins, counted from the start of the run'),
  for: time.describe('how long it lasts unless it is fixed'),
  'again-after': time.optional().describe('from its end to its next beginning; left out, it comes once'),
};

const setting = entry({
  disturbs: z.literal('setting'),
  setting: name.describe('the forming setting that moves'),
  by: measured.describe('change of the actual setting while the target stays'),
  ramp: positiveDuration.optional().describe('time over which the change builds up; left out, it is a step'),
  ...when,
});
const supplier = entry({
  disturbs: z.literal('supplier'),
  stock: name.describe('the stock that is not delivered'),
  supplier: name.optional().describe('the one of several that fails; left out, all of them do'),
  ...when,
});
const marks = entry({
  disturbs: z.literal('marks'),
  station: name.describe('the marking station'),
  'takes-hold': share.optional().describe('chance that a mark can be read at all, while it lasts'),
  grades: gradeShares
    .optional()
    .describe('shares of the grades A to F among marks that took, while it lasts'),
  ...when,
}).refine(({ takesHold, grades }) => takesHold !== undefined || grades !== undefined, {
  error: '"takes-hold" is missing: expected a share with its unit (%), such as 2 %, or "grades"',
});
const stoppage = entry({
  disturbs: z.literal('station'),
  station: name.describe('the station that stands still'),
  cycle: word(['resumes', 'restarts', 'scraps'])
    .default('resumes')
    .describe('what becomes of the interrupted cycle'),
  ...when,
});

/** One disturbance. */
export const disturbance = kinds(
  'disturbs',
  ['setting', 'supplier', 'marks', 'station'],
  [setting, supplier, marks, stoppage],
);

export type DisturbanceSpec = z.output<typeof disturbance> & { readonly name: string };
