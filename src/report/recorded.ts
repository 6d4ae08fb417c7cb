import { z } from 'zod';
import { suggestion } from '../scenario/nearest.ts';
import { DOCUMENTS, type DocumentKind } from './documents.ts';
import { recordIn } from './record.ts';
import { listed } from './words.ts';

const file = z.object({ file: z.string(), sha256: z.string() });

/** What an output says of how it was made, as far as making it again needs it. */
const recorded = z
  .object({
    format: z.string(),
    version: z.string(),
    command: z.array(z.string()).min(2),
    exercise: file.optional(),
    scenario: file.optional(),
    supplements: z.array(file).default([]),
    policy_modules: z.array(file).default([]),
    /** What the command calls the file, where it writes several. */
    file: z
      .string()
      .regex(/^[\w-][\w.-]*$/, { error: 'expected the name of a file' })
      .optional(),
  })
  .refine(({ scenario, exercise }) => scenario ?? exercise, {
    path: ['scenario'],
    error: 'expected a file with its sha256',
  });

export interface Recorded {
  readonly kind: DocumentKind;
  readonly version: string;
  readonly command: readonly string[];
  /** All files that it was made from. */
  readonly inputs: readonly { readonly file: string; readonly sha256: string }[];
  /** What the command calls it; null where it is called as one likes. */
  readonly file: string | null;
}

/**
 * Reads what an output records of itself; in words what is wrong with it where it records too little.
 * @param bytes such as those of comparison.json
 */
export function recordedIn(bytes: Uint8Array): Recorded | string {
  const document = recordIn(bytes);
  if (document === undefined) return 'it does not say what it was made from';
  const { format, command } = (document ?? {}) as Record<string, unknown>;
  const kinds = DOCUMENTS.filter((known) => known.format === format);
  if (kinds.length === 0) {
    const formats = DOCUMENTS.map((known) => known.format);
    return `its "format" is not that of a report${suggestion(String(format ?? ''), formats)}`;
  }
  if (command === undefined) return 'it records no command, as those of older versions do not';
  const read = recorded.safeParse(document);
  if (!read.success) {
    const [{ path, message } = { path: [], message: '' }] = read.error.issues;
    return `"${path.join('.')}" is not as mendline writes it: ${message}`;
  }
  const { data } = read;
  const [first] = data.command;
  const kind = kinds.find((known) => known.command === first);
  if (kind === undefined)
    return `it is not by ${listed(
      kinds.map((known) => `"${known.command}"`),
      'or',
    )}, but by "${first}"`;
  const inputs = [data.exercise ?? [], data.scenario ?? [], data.supplements, data.policy_modules].flat();
  return { kind, version: data.version, command: data.command, inputs, file: data.file ?? kind.file };
}
