import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { simulate } from '../../../src/experiment/simulate.ts';
import type { Cell } from '../../../src/policy/module/cell.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { ranAs, ranWith } from './run-code.ts';

const text = readFileSync(new URL('../../../scenarios/tray-cell.yaml', import.meta.url), 'utf8');

/** The demo with a stand-in for frames and a way to speed orders up. */
const widened = text
  .replace('    on-hand: 2200\n', '    expedite: { lead-time: 1 h }\n    on-hand: 2200\n')
  .replace(
    '\nparts:',
    `  frame b:
    stands-in-for: frame
    unlimited: true
    features:
      groove: { nominal: 120.4 mm, own-sd: 0.08 mm }
      notch: { nominal: 18 mm, class: H11, capability: 1.33 }

parts:`,
  );

/**
 * Holds that code does to the demo just what a response of the scenario's format does, to the last digit, and that it
 * does something at all.
 */
export function expectSame(response: string, start: (cell: Cell) => void): void {
  const scenario = parseScenario(`${widened}  as a response:\n    - ${response}\n`, 'cell.yaml');
  for (const seed of [1, 2]) {
    const code = ranWith(scenario, start, seed);
    expect(code).toEqual(ranAs(scenario, 'as a response', seed));
    expect(code).not.toEqual(simulate(scenario, 'carry on', seed));
  }
}

export const demo = parseScenario(widened, 'cell.yaml');
