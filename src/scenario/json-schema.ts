import { z } from 'zod';
import { schema } from './schema.ts';

/** The scenario format as JSON Schema, for editors to complete and check a file while it is written. */
export function jsonSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'input', reused: 'ref' });
  return { $schema, title: 'mendline scenario', ...rest };
}
