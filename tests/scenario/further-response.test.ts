import { expect, it } from 'vitest';
import { furtherResponse } from '../../src/scenario/further-response.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, SOUND } from './sample.ts';

const scenario = parseScenario(SOUND, 'cell.yaml');
const rework = { do: 'rework', at: 'assembly', bench: 'bench' } as const;

it('reads a response as if it stood in the scenario', () => {
  expect(furtherResponse(rework, scenario, [])).toEqual(rework);
  const text = changed('policies:\n', 'policies:\n  another: [{ do: rework, at: assembly, bench: bench }]\n');
  expect(parseScenario(text, 'cell.yaml').policies[0]!.responses).toEqual([rework]);
});

it.each<[unknown, string[]]>([
  [{ ...rework, bench: 'bnch' }, ['bench: "bnch" is no station; did you mean "bench"?']],
  [{ ...rework, bank: 'x' }, [expect.stringContaining('unknown key "bank"')]],
  [5, [expect.stringContaining('expected a mapping')]],
  [{ do: 'rewrok' }, [expect.stringContaining('did you mean "rework"?')]],
])('says of %j what is wrong with it', (given, problems) => {
  expect(furtherResponse(given, scenario, [])).toEqual({ problems });
});
