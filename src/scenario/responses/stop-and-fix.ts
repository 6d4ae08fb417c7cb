import { z } from 'zod';
import { duration, entry, label, name } from '../fields.ts';
import { time } from '../laws.ts';
import { watch } from '../watches.ts';

export const stopAndFix = entry({
  do: z.literal('stop-and-fix'),
  station: name.describe(
    'the station to hold, and to free of what disturbs its settings, features, marks, reader, gauge or speed',
  ),
  watch: watch.describe('what it acts on: sights gone wrong, a chart of readings, or their capability'),
  takes: time.describe('how long it is held'),
  name: label.optional().describe('what other responses of the policy call it under "response"'),
  'cool-down': duration.default(0).describe('after a fix, how long the watch is not heeded'),
});
