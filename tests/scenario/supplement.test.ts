import { describe, expect, it } from 'vitest';
import { parseJoined, parseScenario } from '../../src/scenario/parse.ts';
import { ScenarioError } from '../../src/scenario/problem.ts';
import { changed, marked, problems, SOUND } from './sample.ts';

const HEAD = 'mendline: 1\ntitle: more\nabout: made up\n';
const SLOW = 'policies:\n  go slow: [{ do: hold, station: packing, when: { stock: sheet, below: 9 } }]\n';

/** Expects for each text, the line's first, a problem at each of its marks with the messages, in order, and no others. */
function expectAllRefused(texts: readonly string[], ...messages: string[]): void {
  const [line, ...others] = texts.map((text, i) => ({ ...marked(text), source: `${i}.yaml` }));
  let error: unknown;
  try {
    parseJoined(line!, others);
  } catch (thrown) {
    error = thrown;
  }
  expect(error).toBeInstanceOf(ScenarioError);
  const { refused } = error as ScenarioError;
  const found = refused.flatMap(({ source, problems: all }) =>
    all.map(({ line, column }) => `${source}:${line}:${column}`),
  );
  expect(found).toEqual(
    [line!, ...others].flatMap(({ source, places }) =>
      places.map(({ line, column }) => `${source}:${line}:${column}`),
    ),
  );
  const said = (error as ScenarioError).problems.map(({ message }) => message);
  expect(said).toEqual(messages.map((message) => expect.stringContaining(message)));
  for (const place of found) expect((error as ScenarioError).describe()).toContain(`${place}: `);
}

describe('a supplement', () => {
  it('adds its policies, disturbances and cases behind those of the line', () => {
    const { scenario, supplements } = parseJoined({ source: 'line', text: SOUND }, [
      {
        source: 'a',
        text: `${HEAD}helps: Where it must.\nhurts: Elsewhere.\n${SLOW}`,
      },
      {
        source: 'b',
        text: `\uFEFF${HEAD}disturbances:\n  lame: { disturbs: station, station: trimming, at: 1 h, for: 1 h }\ncases:\n  lame and cold: [lame, cold]\n`,
      },
    ]);
    const alone = parseScenario(SOUND, 'line');
    const names = (all: readonly { name: string }[]) => all.map(({ name }) => name);
    expect(names(scenario.policies)).toEqual([...names(alone.policies), 'go slow']);
    expect(names(scenario.disturbances)).toEqual([...names(alone.disturbances), 'lame']);
    expect(scenario.cases).toEqual([{ name: 'lame and cold', disturbances: ['lame', 'cold'] }]);
    expect({ ...scenario, policies: [], disturbances: [], cases: [] }).toEqual({
      ...alone,
      policies: [],
      disturbances: [],
      cases: [],
    });
    expect(supplements).toEqual([
      { title: 'more', about: 'made up', helps: 'Where it must.', hurts: 'Elsewhere.' },
      { title: 'more', about: 'made up', helps: null, hurts: null },
    ]);
  });

  it('gives the same as if the scenario said so itself', () => {
    const { scenario } = parseJoined({ source: 'line', text: SOUND }, [{ source: 'a', text: HEAD + SLOW }]);
    expect(scenario).toEqual(parseScenario(SOUND + SLOW.replace('policies:\n', ''), 'line'));
  });

  it('may hold all the policies', () => {
    const [line] = SOUND.split('policies:\n');
    const { scenario } = parseJoined({ source: 'line', text: line! }, [{ source: 'a', text: HEAD + SLOW }]);
    expect(scenario.policies.map(({ name }) => name)).toEqual(['go slow']);
  });

  it('that names what the line has not is refused where it stands, with names of the line', () => {
    expectAllRefused(
      [SOUND, HEAD + SLOW.replace('packing', '¤paking').replace('sheet', '¤shet')],
      '"paking" is no station; did you mean "packing"?',
      '"shet" is no stock; did you mean "sheet"?',
    );
  });

  it('is refused with all problems of all files at once', () => {
    expectAllRefused(
      [
        changed('to: packing', 'to: ¤paking'),
        HEAD + SLOW.replace('hold', '¤hald'),
        `${HEAD.replace('title', '¤titel')}policies: { ¤carry on: [], ¤go slow: [] }\n¤stations: {}\n`.replace(
          'mendline',
          '¤mendline',
        ),
        '¤',
      ],
      '"paking" is no station',
      'do: "hald" is not known; did you mean "hold"?',
      '"title" is missing',
      'unknown key "titel"; did you mean "title"?',
      '"carry on" is a policy of 0.yaml already; give this one another name',
      '"go slow" is a policy of 1.yaml already',
      '"stations" stands in the scenario alone; a supplement adds disturbances, cases, policies',
      'the file is empty',
    );
  });

  it('is read though the line cannot be', () => {
    expectAllRefused(
      ['title: a\n¤title: b\n', HEAD + SLOW.replace('hold', '¤hald')],
      'this key is in the same mapping twice',
      'do: "hald" is not known',
    );
  });

  it('that adds nothing is refused', () => {
    expectAllRefused(
      [SOUND, `¤${HEAD}`],
      'nothing is added; expected at least one of disturbances, cases, policies',
    );
  });

  it('by itself is no scenario', () => {
    expect(problems(HEAD + SLOW)).toEqual([
      { line: 1, column: 1, message: expect.stringContaining('this file behind "--with"') },
    ]);
  });
});

describe('an error of several files', () => {
  it('counts the problems of each', () => {
    expect(() =>
      parseJoined({ source: 'line', text: changed('to: packing', 'to: paking') }, [
        { source: 'a', text: `${HEAD}policies: { 1: [], 2: [] }\n` },
      ]),
    ).toThrow('line: 1 problem\na: 2 problems');
  });
});
