import { z } from 'zod';

/** The version of the scenario format that this program reads. */
const FORMAT = 1;

/** What every file of the format opens with. */
export const format = z
  .literal(FORMAT, { error: `expected the version of the scenario format, ${FORMAT}` })
  .describe('version of the scenario format');
