import { describe, expect, it } from 'vitest';
import { casesOf, underCase } from '../../src/disturbance/case.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, refuses, SOUND } from '../scenario/sample.ts';

const CASES = changed(
  'policies:\n',
  'cases:\n  cold and late: [late, cold]\n  one stop: [halt]\n  calm: []\npolicies:\n',
);
const scenario = parseScenario(CASES, 'cell.yaml');

describe('cases', () => {
  it('are named lists of disturbances', () => {
    expect(casesOf(scenario)).toEqual([
      { name: 'cold and late', disturbances: ['late', 'cold'] },
      { name: 'one stop', disturbances: ['halt'] },
      { name: 'calm', disturbances: [] },
    ]);
  });

  it('are each disturbance by itself and all together where none are named', () => {
    const plain = parseScenario(SOUND, 'cell.yaml');
    const found = casesOf(plain);
    expect(found.map(({ name }) => name)).toEqual(['cold', 'late', 'faded', 'halt', 'all together']);
    expect(found.slice(0, 4).every((one) => one.disturbances.join() === one.name)).toBe(true);
    expect(underCase(plain, 'all together').disturbances).toEqual(plain.disturbances);
    const one = { ...plain, disturbances: plain.disturbances.slice(0, 1) };
    expect(casesOf(one)).toEqual([{ name: 'cold', disturbances: ['cold'] }]);
    expect(casesOf({ ...plain, disturbances: [] })).toEqual([]);
  });

  it('leave the scenario as it is but for what they leave out, in the order of the file', () => {
    const { disturbances, ...rest } = underCase(scenario, 'cold and late');
    expect(disturbances.map(({ name }) => name)).toEqual(['cold', 'late']);
    expect({ ...rest, disturbances: scenario.disturbances }).toEqual(scenario);
  });

  it('give the run of a file that has these disturbances alone', () => {
    const halt = '  halt: { disturbs: station, station: packing, at: 2 h, for: 4 h }\n';
    const alone = parseScenario(
      SOUND.replace(/disturbances:\n[\s\S]*?policies:/, `disturbances:\n${halt}policies:`),
      'cell.yaml',
    );
    const run = simulate(underCase(scenario, 'one stop'), 'carry on', 1);
    expect(JSON.stringify(run)).toBe(JSON.stringify(simulate(alone, 'carry on', 1)));
  });

  it('are asked for by their names', () => {
    expect(() => underCase(scenario, 'cold')).toThrow('the scenario has no case "cold"');
  });
});

describe('a case', () => {
  refuses(
    [
      ['one stop: [halt]', 'one stop: [¤hallt]', '"hallt" is no disturbance; did you mean "halt"?'],
      ['[late, cold]', '[late, cold, ¤late]', '"late" is in this case already'],
      ['calm: []', 'calm: ¤halt', 'expected a list of disturbances; [] is the undisturbed line'],
    ],
    CASES,
  );
});
