import { z } from 'zod';
import { FORMAT } from './json.ts';

/** What a report says of how it was made, as far as making it again needs it. */
const recorded = z.object({
  format: z.literal(FORMAT),
  version: z.string(),
  command: z.array(z.string()).min(2),
  scenario: z.object({ file: z.string(), sha256: z.string() }),
  supplements: z.array(z.object({ file: z.string(), sha256: z.string() })).default([]),
  policy_modules: z.array(z.object({ file: z.string(), sha256: z.string() })).default([]),
});
export type Recorded = z.output<typeof recorded>;

/**
 * Reads what comparison.json records; in words what is wrong with it where it records too little.
 * @param text the document
 */
export function recordedIn(text: string): Recorded | string {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return 'this is no JSON; name the folder of a report, or its comparison.json';
  }
  const read = recorded.safeParse(document);
  if (read.success) return read.data;
  const { format, command } = (document ?? {}) as Record<string, unknown>;
  if (format !== FORMAT) return `its "format" is not "${FORMAT}"`;
  if (command === undefined) return 'it records no command, as those of older versions do not';
  const [{ path, message } = { path: [], message: '' }] = read.error.issues;
  return `"${path.join('.')}" is not as mendline writes it: ${message}`;
}
