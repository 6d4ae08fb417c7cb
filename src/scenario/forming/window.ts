import { entry, level, name, word } from '../fields.ts';

/** What becomes of parts with a flaw of forming. */
export const outside = word(['scrap', 'pass'])
  .default('scrap')
  .describe(
    'what becomes of the parts: seen at once and scrapped, or passed on unseen, never to fit and off limits where gauged',
  );

/** Between which values of a setting parts form well. */
export const formingWindow = entry({
  setting: name.describe('the setting that it holds for, such as the temperature of the sheet'),
  from: level.optional().describe('below this a part is incomplete'),
  to: level.optional().describe('above this a part is webbed'),
  outside,
}).refine(({ from, to }) => from !== undefined || to !== undefined, {
  error: 'expected "from", "to" or both',
});
