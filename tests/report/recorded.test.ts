import { describe, expect, it } from 'vitest';
import { recordedIn } from '../../src/report/recorded.ts';

const SOUND = {
  format: 'mendline comparison 2',
  version: '0.1.0',
  command: ['compare', 'a.yaml'],
  scenario: { file: 'a.yaml', title: 'A', sha256: 'ab' },
};
const read = (changed: object) => recordedIn(JSON.stringify({ ...SOUND, ...changed }));

describe('recordedIn', () => {
  it('reads what a report says of how it was made', () => {
    const supplements = [{ file: 'b.yaml', title: 'B', sha256: 'cd' }];
    expect(read({ supplements })).toEqual({
      ...SOUND,
      scenario: { file: 'a.yaml', sha256: 'ab' },
      supplements: [{ file: 'b.yaml', sha256: 'cd' }],
      policy_modules: [],
    });
  });

  it.each([
    [{ format: 'mendline explain 1' }, 'its "format" is not that of a report'],
    [{ format: 'mendline comparison 22' }, 'not that of a report; did you mean "mendline comparison 2"?'],
    [{ format: 'mendline crossed experiment 1' }, 'it is not by "cross", but by "compare"'],
    [{ command: undefined }, 'it records no command'],
    [{ command: ['compare', 3] }, '"command.1" is not as mendline writes it'],
    [{ scenario: { file: 'a.yaml' } }, '"scenario.sha256" is not as mendline writes it'],
  ])('says what is wrong with %j', (changed, words) => {
    expect(read(changed)).toContain(words);
  });

  it.each(['', '{', '"compare', 'null', '[]', '3'])('takes %j for no report', (text) => {
    expect(recordedIn(text)).toMatch(/no JSON|"format"/);
  });
});
