import { z } from 'zod';
import { count, entry, measured, name, positiveShare, ratio, spread, word } from '../fields.ts';
import { always } from '../in-force.ts';

export const retune = entry({
  do: z.literal('retune'),
  setting: name.describe('the forming setting that is moved'),
  by: name.describe('the feature whose readings are followed'),
  rule: word(['ewma', 'deadbeat', 'step'])
    .default('ewma')
    .describe(
      'cancels a running estimate of the offset (EWMA), or the whole of the newest (deadbeat), or moves by a fixed step against it',
    ),
  weight: positiveShare
    .optional()
    .describe('of the rule ewma: weight of the newest reading in the running estimate'),
  step: measured.optional().describe('of the rule step: how far the setting is moved at a time'),
  deadband: spread.describe('leave the setting alone while the estimated offset is smaller than this'),
  gain: ratio('length', '-0.03 mm/°C')
    .optional()
    .describe('what the feature is believed to change per unit of the setting; left out, as designed'),
  'mean-of': count(1).default(1).describe('acts on the mean of so many readings at a time'),
  ...always,
}).superRefine(({ rule, weight, step, gain }, context) => {
  const say = (key: string, message: string) => context.addIssue({ code: 'custom', message, path: [key] });
  if (rule === 'ewma' && weight === undefined)
    say('weight', 'the rule ewma needs the weight of the newest reading, such as 20 %');
  if (rule !== 'ewma' && weight !== undefined)
    say('weight', `the rule ${rule} has no weight; leave it out, or take the rule ewma`);
  if (rule === 'step' && step === undefined)
    say('step', 'the rule step needs how far the setting is moved at a time, such as 0.5 °C');
  if (rule !== 'step' && step !== undefined)
    say('step', `the rule ${rule} has no step; leave it out, or take the rule step`);
  if (step !== undefined && step.value <= 0)
    say('step', 'a step is above zero; which way to go, the gain tells');
  if (gain !== undefined && gain.value === 0) say('gain', 'a gain of zero cannot guide a setting');
});
