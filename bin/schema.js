// Writes the formats of scenarios and supplements as JSON Schema, for editors to complete and check by.
import { writeFileSync } from 'node:fs';
import { jsonSchema, supplementJsonSchema } from '../.build/scenario/json-schema.js';

const folder = new URL('../scenarios/', import.meta.url);
const written = { 'scenario.schema.json': jsonSchema(), 'supplement.schema.json': supplementJsonSchema() };
for (const [name, schema] of Object.entries(written))
  writeFileSync(new URL(name, folder), `${JSON.stringify(schema, null, 2)}\n`);
