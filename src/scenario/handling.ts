import { count, duration, entry, name } from './fields.ts';

/** Loading before and unloading after each cycle of a station. */
export const handling = entry({
  by: name.optional().describe('the crew that loads and unloads; left out, the station does it itself'),
  load: duration.default(0).describe('time before each cycle'),
  unload: duration.default(0).describe('time after each cycle'),
  priority: count(1).default(1).describe('among the calls for the crew; 1 is served first'),
}).refine(({ load, unload }) => load + unload > 0, {
  error: 'handling takes time: give "load", "unload" or both, above zero, or leave "handling" out',
});
