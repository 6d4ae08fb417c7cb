import { titled } from '../scenario/json-schema.ts';
import { exerciseSchema } from './schema.ts';

/** The format of exercises as JSON Schema, for editors to complete and check a file while it is written. */
export const exerciseJsonSchema = () => titled('mendline exercise', exerciseSchema);
