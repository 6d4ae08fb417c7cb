// Writes the formats of scenarios, supplements, exercises, comparison.json and selection.json as JSON Schema, for editors and readers to
// check by.
import { writeFileSync } from 'node:fs';
import { exerciseJsonSchema } from '../.build/exercise/json-schema.js';
import { comparisonJsonSchema } from '../.build/report/comparison-schema.js';
import { selectionJsonSchema } from '../.build/report/selection/selection-schema.js';
import { jsonSchema, supplementJsonSchema } from '../.build/scenario/json-schema.js';

const written = {
  'scenarios/scenario.schema.json': jsonSchema(),
  'scenarios/supplement.schema.json': supplementJsonSchema(),
  'scenarios/exercises/exercise.schema.json': exerciseJsonSchema(),
  'reports/comparison.schema.json': comparisonJsonSchema(),
  'reports/selection.schema.json': selectionJsonSchema(),
};
for (const [name, schema] of Object.entries(written))
  writeFileSync(new URL(`../${name}`, import.meta.url), `${JSON.stringify(schema, null, 2)}\n`);
