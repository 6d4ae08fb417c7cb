import { expect, it } from 'vitest';
import { undisturbed } from '../../src/disturbance/undisturbed.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, SOUND } from '../scenario/sample.ts';

it('gives what a disturbance that changes nothing gives, but for the events of the disturbance itself', () => {
  const twin = undisturbed(parseScenario(SOUND, 'cell.yaml'));
  const { disturbances, policies } = parseScenario(changed('by: -6 °C', 'by: 0 °C'), 'cell.yaml');
  const nothing = disturbances.filter(({ name }) => name === 'cold');
  expect(nothing).toHaveLength(1);
  for (const { name } of policies) {
    const { events: _, ...zero } = simulate({ ...twin, disturbances: nothing }, name, 2);
    expect(simulate(twin, name, 2)).toMatchObject(zero);
  }
});
