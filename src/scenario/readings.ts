import type { z } from 'zod';
import { REFERENCE_TEMPERATURE } from '../standards/thermal-expansion.ts';
import { duration, entry, length, spread, temperatureDifference } from './fields.ts';
import { gaugeStudy } from './gauge-study.ts';

/** How a gauge reads one feature. */
export const reading = entry({
  bias: length.default(0).describe('what every reading is off by'),
  'warm-by': temperatureDifference
    .optional()
    .describe(
      `how much warmer than ${REFERENCE_TEMPERATURE} °C (ISO 1) the part is when it is read, by a gauge that does not correct for it; the feature "expands"`,
    ),
  repeatability: spread
    .optional()
    .describe('standard deviation from reading to reading of one part by one appraiser'),
  reproducibility: spread
    .optional()
    .describe('standard deviation between appraisers; each has an offset of his own throughout a run'),
  study: gaugeStudy.optional().describe('in place of both: a gauge study that they follow from'),
  resolution: spread.default(0).describe('the reading is rounded to a multiple of it'),
  takes: duration.default(0).describe('time of one reading, added to the cycle'),
  guard: spread.default(0).describe('both limits are drawn in by this much when a reading is judged'),
})
  .superRefine(({ repeatability, reproducibility, study }, context) => {
    const say = (message: string, path: string[]) => context.addIssue({ code: 'custom', message, path });
    if (study === undefined && repeatability === undefined)
      say('expected a length with its unit, such as 0.02 mm; or "study", the gauge study it follows from', [
        'repeatability',
      ]);
    if (study === undefined) return;
    for (const [key, given] of Object.entries({ repeatability, reproducibility }))
      if (given !== undefined) say(`"study" gives the ${key} already; take one of them out`, [key]);
  })
  .transform(({ repeatability = 0, reproducibility = 0, study, ...rest }) => ({
    ...rest,
    repeatability: study?.repeatability ?? repeatability,
    reproducibility: study?.reproducibility ?? reproducibility,
    /** What the study found, mm; null where the figures were given. */
    study: study ?? null,
  }));

export type ReadingSpec = z.output<typeof reading> & { readonly name: string };
