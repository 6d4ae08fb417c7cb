import { z } from 'zod';
import { suggestion } from '../scenario/nearest.ts';
import { DOCUMENTS } from './documents.ts';

/** What a report says of how it was made, as far as making it again needs it. */
const recorded = z.object({
  format: z.string(),
  version: z.string(),
  command: z.array(z.string()).min(2),
  scenario: z.object({ file: z.string(), sha256: z.string() }),
  supplements: z.array(z.object({ file: z.string(), sha256: z.string() })).default([]),
  policy_modules: z.array(z.object({ file: z.string(), sha256: z.string() })).default([]),
});
export type Recorded = z.output<typeof recorded>;

/**
 * Reads what the document of a report records; in words what is wrong with it where it records too little.
 * @param text the document, such as comparison.json
 */
export function recordedIn(text: string): Recorded | string {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return 'this is no JSON; name the folder of a report, or its comparison.json';
  }
  const { format, command } = (document ?? {}) as Record<string, unknown>;
  const kind = DOCUMENTS.find((known) => known.format === format);
  if (kind === undefined) {
    const formats = DOCUMENTS.map((known) => known.format);
    return `its "format" is not that of a report${suggestion(String(format ?? ''), formats)}`;
  }
  if (command === undefined) return 'it records no command, as those of older versions do not';
  const read = recorded.safeParse(document);
  if (!read.success) {
    const [{ path, message } = { path: [], message: '' }] = read.error.issues;
    return `"${path.join('.')}" is not as mendline writes it: ${message}`;
  }
  const [first] = read.data.command;
  return first === kind.command ? read.data : `it is not by "${kind.command}", but by "${first}"`;
}
