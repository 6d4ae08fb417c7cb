import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, refuses, SOUND } from './sample.ts';

const MATCH = 'among: 9, guard: 0 mm, mate-repeatability: 0 mm';

describe('match', () => {
  it('takes the hardest fit among waiting parts where nothing else is said', () => {
    const { policies } = parseScenario(SOUND, 'cell.yaml');
    const found = policies.flatMap(({ responses }) => responses).find((it) => it.do === 'match');
    expect(found).toMatchObject({ among: 9, rule: 'hardest-fit', patience: 0 });
    expect(found).not.toHaveProperty('bank');
  });

  it('goes by classes from a bank', () => {
    const keys =
      'bank: 4, rule: classes, classes: { number: 3, width: 80 um }, patience: 20 s, mate-repeatability: 0 mm';
    const { policies } = parseScenario(changed(MATCH, keys), 'cell.yaml');
    const found = policies.flatMap(({ responses }) => responses).find((it) => it.do === 'match');
    expect(found).toMatchObject({
      bank: 4,
      rule: 'classes',
      classes: { number: 3, width: 0.08 },
      patience: 20,
    });
  });

  const rest = 'guard: 0 mm, mate-repeatability: 0 mm';
  refuses([
    [
      MATCH,
      `among: 9, bank: ¤4, ${rest}`,
      'give either "among" (parts in the buffer) or "bank" (places beside it)',
    ],
    [MATCH, `among: ¤1, ${rest}`, 'expected a whole number from 2'],
    [MATCH, `bank: ¤0, ${rest}`, 'expected a whole number from 1'],
    [MATCH, `bank: 4, rule: ¤hardest, ${rest}`, 'did you mean "hardest-fit"?'],
    [
      MATCH,
      `bank: 4, classes: ¤{ number: 3, width: 1 mm }, ${rest}`,
      'only the rule "classes" goes by classes',
    ],
    [
      MATCH,
      'bank: 4, rule: classes, classes: { number: 3, width: 1 mm }, guard: ¤0 mm, mate-repeatability: 0 mm',
      'the rule "classes" goes by classes alone',
    ],
    [
      MATCH,
      'bank: 4, rule: classes, classes: { number: ¤1, width: 1 mm }, mate-repeatability: 0 mm',
      'expected a whole number from 2',
    ],
    [
      MATCH,
      'bank: 4, rule: classes, classes: { number: 3, width: ¤0 mm }, mate-repeatability: 0 mm',
      'a length here is above zero',
    ],
    [MATCH, `among: 4, patience: ¤3 s, ${rest}`, 'a mate waits for parts to come into a "bank" only'],
    [
      '- { do: match, at: assembly, among: 9, guard: 0 mm,',
      '- ¤{ do: match, at: assembly, among: 9,',
      '"guard" is missing: expected a length with its unit',
    ],
    [
      '- { do: match, at: assembly, among: 9,',
      '- ¤{ do: match, at: assembly,',
      '"among" is missing: give "among" (parts in the buffer) or "bank"',
    ],
    [
      '- { do: match, at: assembly, among: 9, guard: 0 mm,',
      '- ¤{ do: match, at: assembly, among: 9, rule: classes,',
      '"classes" is missing: the rule "classes" needs them, such as { number: 3, width: 0.08 mm }',
    ],
  ]);
});
