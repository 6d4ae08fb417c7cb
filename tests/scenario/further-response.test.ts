import { describe, expect, it } from 'vitest';
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

describe('a way that a line must be built with', () => {
  const withWays = parseScenario(
    changed(
      'policies:\n',
      `policies:
  ways:
    - { do: reroute, at: marking, to: assembly, when: { from: 1 h } }
    - { do: skip, station: packing, later: no, when: { from: 1 h } }
`,
    ),
    'cell.yaml',
  );
  const around = { do: 'reroute', at: 'marking', to: 'assembly', when: { from: '2 h' } };
  const past = (later: string) => ({ do: 'skip', station: 'packing', later, when: { from: '2 h' } });

  it('is one that a policy of the scenario names', () => {
    for (const given of [around, past('no')])
      expect(furtherResponse(given, withWays, [])).toMatchObject({ do: given.do });
  });

  it('is refused elsewhere, with what to do', () => {
    const missing = (way: string) => ({
      problems: [expect.stringContaining(`give it one with { ${way}, when:`)],
    });
    expect(furtherResponse(around, scenario, [])).toEqual(missing('do: reroute, at: marking, to: assembly'));
    expect(furtherResponse(past('no'), scenario, [])).toEqual(
      missing('do: skip, station: packing, later: no'),
    );
    expect(furtherResponse(past('yes'), withWays, [])).toEqual(
      missing('do: skip, station: packing, later: yes'),
    );
  });
});
