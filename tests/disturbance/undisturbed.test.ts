import { expect, it } from 'vitest';
import { undisturbed } from '../../src/disturbance/undisturbed.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { SOUND } from '../scenario/sample.ts';

it('gives what a disturbance that does nothing gives, event by event', () => {
  const scenario = parseScenario(SOUND, 'cell.yaml');
  const nothing = scenario.disturbances
    .filter((it) => it.disturbs === 'setting')
    .map((it) => ({ ...it, by: { ...it.by, law: { distribution: 'constant', value: 0 } as const } }));
  expect(nothing).toHaveLength(1);
  for (const { name } of scenario.policies) {
    const twin = simulate(undisturbed(scenario), name, 2);
    const zero = simulate({ ...scenario, disturbances: nothing }, name, 2);
    expect(JSON.stringify(zero)).toBe(JSON.stringify(twin));
  }
});
