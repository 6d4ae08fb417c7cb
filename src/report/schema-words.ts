import { z } from 'zod';

/** Words in which the formats of reports are written, each with what it means. */
export const text = (meaning: string) => z.string().describe(meaning);
export const number = (meaning: string) => z.number().describe(meaning);
export const whole = (meaning: string) => z.int().min(0).describe(meaning);
export const maybe = (meaning: string) =>
  z.number().nullable().describe(`${meaning}; null where there is none`);
export const policy = text('name of the policy');
export const better = z.enum(['higher', 'lower']).describe('which is better');

const sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .describe('SHA-256 of the file');
const file = text('path as the command named it');

/** SHA-256 of CSV files, by name. */
export const csvSha256 = z.record(z.string(), sha256);

/** What `madeFromJson` gives. */
export const madeFrom = <Format extends string>(format: Format) => ({
  format: z.literal(format),
  version: text('version of mendline that made the runs'),
  command: z
    .array(z.string())
    .describe('words of the command line behind mendline, without those that leave the results alone'),
  scenario: z.object({ file, title: text('title of the scenario'), sha256 }),
  supplements: z
    .array(z.object({ file, title: text('its title'), sha256 }))
    .exactOptional()
    .describe('what was joined to the scenario'),
  policy_modules: z
    .array(z.object({ policy, file, sha256 }))
    .exactOptional()
    .describe('policies written as code'),
});
