import { entry, text } from './fields.ts';
import { findings } from './findings.ts';
import { format } from './format.ts';
import type { Finding } from './problem.ts';
import { schema } from './schema.ts';
import { SECTIONS, sections } from './sections.ts';

/** The whole file of a supplement: what is joined to the scenario of a line, which it can be read without. */
export const supplementSchema = entry({
  mendline: format,
  title: text.describe('what the supplement is called'),
  about: text.describe('what it adds, and where its figures come from'),
  helps: text.optional().describe('of policies, in a sentence: where they should do better than carrying on'),
  hurts: text.optional().describe('of policies, in a sentence: where they should do worse than carrying on'),
  disturbances: sections.disturbances.optional(),
  cases: sections.cases.optional(),
  policies: sections.policies.optional(),
  sizings: sections.sizings.optional(),
}).refine((given) => SECTIONS.some((section) => given[section] !== undefined), {
  error: `nothing is added; expected at least one of ${SECTIONS.join(', ')}`,
});

/** What a supplement says of itself. */
export interface SupplementSpec {
  readonly title: string;
  readonly about: string;
  readonly helps: string | null;
  readonly hurts: string | null;
}

/** What stands in a scenario alone. */
const OF_A_LINE: readonly string[] = Object.keys(schema.in.shape).filter(
  (key) => !Object.hasOwn(supplementSchema.in.shape, key),
);

/** Whether a file that is given as a scenario is a supplement: it adds to a line, and has nothing of one. */
export function isSupplement(raw: unknown): boolean {
  if (typeof raw !== 'object' || raw === null) return false;
  return SECTIONS.some((key) => Object.hasOwn(raw, key)) && !OF_A_LINE.some((key) => Object.hasOwn(raw, key));
}

/** What is wrong with a supplement by itself, and what it says of itself if nothing is. */
export function readSupplement(raw: unknown): { found: Finding[]; spec: SupplementSpec | null } {
  const result = supplementSchema.safeParse(raw);
  if (result.success) {
    const { title, about, helps = null, hurts = null } = result.data;
    return { found: [], spec: { title, about, helps, hurts } };
  }
  const found = findings(result.error, raw).map((finding) => {
    const { path, key } = finding;
    if (path.length > 0 || key === undefined || !OF_A_LINE.includes(key)) return finding;
    const message = `"${key}" stands in the scenario alone; a supplement adds ${SECTIONS.join(', ')}`;
    return { ...finding, message };
  });
  return { found, spec: null };
}
