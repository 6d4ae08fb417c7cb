import { z } from 'zod';
import { schema } from './schema.ts';
import { supplementSchema } from './supplement.ts';

/** The format as JSON Schema, under a title. */
export function titled(title: string, given: z.ZodType): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(given, { io: 'input', reused: 'ref' });
  return { $schema, title, ...rest };
}

/** The scenario format as JSON Schema, for editors to complete and check a file while it is written. */
export const jsonSchema = () => titled('mendline scenario', schema);

/** The same of what is joined to a scenario. */
export const supplementJsonSchema = () => titled('mendline supplement', supplementSchema);
