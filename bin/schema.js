// Writes the scenario format as JSON Schema to scenarios/scenario.schema.json, for editors to complete and check by.
import { writeFileSync } from 'node:fs';
import { jsonSchema } from '../.build/scenario/json-schema.js';

const file = new URL('../scenarios/scenario.schema.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(jsonSchema(), null, 2)}\n`);
