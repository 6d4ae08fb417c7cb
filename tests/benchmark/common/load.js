// What the children share: a scenario read from a file, with another length if wanted.
import { readFileSync } from 'node:fs';
import { inlineMore } from '../../../.build/experiment/inline-more.js';
import { parseScenario } from '../../../.build/scenario/parse.js';

// As the workers of the command do.
inlineMore();

/** `length` in s. */
export function load(file, length) {
  const scenario = parseScenario(readFileSync(file, 'utf8'), file);
  return length === undefined ? scenario : { ...scenario, run: { ...scenario.run, length } };
}

/** Seconds that `work` takes. */
export function seconds(work) {
  const begun = performance.now();
  work();
  return (performance.now() - begun) / 1000;
}
