import { expect, it } from 'vitest';
import { variantOf } from '../../src/experiment/variant.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { SOUND } from '../scenario/sample.ts';

it('is the scenario itself, or its twin without disturbances', () => {
  const scenario = parseScenario(SOUND, 'cell.yaml');
  expect(variantOf(scenario)).toBe(scenario);
  expect(variantOf(scenario, { disturbed: true })).toBe(scenario);
  expect(scenario.disturbances.length).toBeGreaterThan(0);
  expect(variantOf(scenario, { disturbed: false })).toEqual({ ...scenario, disturbances: [] });
});
