import { expect, it } from 'vitest';
import { underCase } from '../../src/disturbance/case.ts';
import { atSeverity } from '../../src/disturbance/severity.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { variantOf } from '../../src/experiment/variant.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { SOUND } from '../scenario/sample.ts';

const scenario = parseScenario(SOUND, 'cell.yaml');

it('is the scenario itself, or its twin without disturbances', () => {
  expect(variantOf(scenario)).toBe(scenario);
  expect(variantOf(scenario, { disturbed: true })).toBe(scenario);
  expect(scenario.disturbances.length).toBeGreaterThan(0);
  expect(variantOf(scenario, { disturbed: false })).toEqual({ ...scenario, disturbances: [] });
});

it('is a case at a severity, as if either were asked for by itself', () => {
  expect(variantOf(scenario, { disturbed: true, case: 'halt' })).toEqual(underCase(scenario, 'halt'));
  expect(variantOf(scenario, { disturbed: true, severity: 2 })).toEqual(atSeverity(scenario, 2));
  const both = variantOf(scenario, { disturbed: true, case: 'halt', severity: 0.5 });
  expect(both).toEqual(atSeverity(underCase(scenario, 'halt'), 0.5));
});

it('at severity 0 gives the bytes of the twin, whatever the case and the policy', () => {
  for (const { name: policy } of scenario.policies) {
    const twin = simulate(variantOf(scenario, { disturbed: false }), policy, 2);
    for (const of of ['cold', 'halt', 'all together']) {
      const calm = simulate(variantOf(scenario, { disturbed: true, case: of, severity: 0 }), policy, 2);
      expect(JSON.stringify(calm), `${policy}, ${of}`).toBe(JSON.stringify(twin));
    }
  }
});
