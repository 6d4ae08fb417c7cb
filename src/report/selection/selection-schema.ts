import { z } from 'zod';
import { PROCEDURES } from '../../experiment/selection/settings.ts';
import { MEASURES } from '../../line/measures.ts';
import { better, csvSha256, madeFrom, maybe, number, policy, text, whole } from '../schema-words.ts';
import { SELECTION_FORMAT, type SelectionDocument } from './selection-json.ts';

const row = z.object({
  policy,
  standing: z
    .enum(['chosen', 'left out', 'not chosen', 'ahead', 'undecided'])
    .describe('what became of it; ahead and undecided where nothing was chosen'),
  runs: whole('runs of it that counted'),
  mean: number('mean over them; of policies with other numbers of runs it is under other seeds'),
  behind: maybe(
    'mean of the differences to the policy that outdid it, or to the one ahead, under the same seeds, positive where it is worse',
  ),
  first_mean: number('mean over the first stage'),
  first_lower: maybe('lower end of its interval'),
  first_upper: maybe('upper end of its interval'),
  beside: maybe('mean less that of the best other policy, where the procedure gives it an interval'),
  beside_lower: maybe('lower end of its interval'),
  beside_upper: maybe('upper end of its interval'),
});

/** The format of selection.json; what the document is made by must give what this says. */
const schema = z.object({
  ...madeFrom(SELECTION_FORMAT),
  by: z
    .object({
      key: text('name of the measure in data files, which ends in its unit'),
      name: text('name of the measure in reports'),
      unit: text('unit of the numbers of this document; 1 is a plain ratio'),
      better,
      meaning: text('what it is'),
    })
    .describe('the measure that decides'),
  procedure: z.enum(PROCEDURES).describe('how the runs were asked for'),
  worth: number('the lead that is worth finding'),
  probability: number('that the best is chosen, if it leads every other by that or more'),
  first_stage: whole('runs of each policy before anything was judged'),
  at_most: whole('runs of each policy after which it ends anyhow'),
  ended: z.enum(['one left', 'level', 'best mean', 'most runs']).describe('how; after most runs undecided'),
  chosen: z.string().nullable().describe('the policy that is chosen; null where undecided'),
  ahead: text('the policy with the best mean of those left'),
  needed: maybe('runs of each policy that is left after which it ends at the latest'),
  policies: z.array(z.string()).describe('names in the order of the scenario'),
  level: number('coverage of the interval of a mean of the first stage, by itself'),
  rows: z.array(row).describe('one a policy'),
  left_out: z
    .array(
      z.object({
        policy,
        runs: whole('runs after which it was left out'),
        by: text('the policy that outdid it, of several the one by most'),
        behind: number('how far its mean lay behind'),
        allowed: number('how far it might have lain behind and stayed'),
      }),
    )
    .describe('in the order in which they went'),
  runs: z
    .array(
      z.object({
        policy,
        seed: whole('seed of the run'),
        measures: z.object(
          Object.fromEntries(MEASURES.map(({ key, meaning }) => [key, maybe(meaning)])) as Record<
            string,
            z.ZodNullable<z.ZodNumber>
          >,
        ),
      }),
    )
    .describe('those that counted'),
  csv_sha256: csvSha256.describe('SHA-256 of the CSV files that belong to this document, by name'),
}) satisfies z.ZodType<SelectionDocument>;

/** The format of selection.json as JSON Schema, 2020-12. `closed` refuses what is not named, for tests. */
export function selectionJsonSchema(closed = false): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: closed ? 'output' : 'input', reused: 'ref' });
  return { $schema, title: SELECTION_FORMAT, ...rest };
}
