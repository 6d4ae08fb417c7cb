import { describe, expect, it } from 'vitest';
import { framed } from '../../src/report/page-frame.ts';
import { recordIn } from '../../src/report/record.ts';
import { recordedIn } from '../../src/report/recorded.ts';
import { logFiles } from '../../src/report/trace/log-files.ts';
import { SOURCE } from './trace/traced-sample.ts';
import { written } from './trace/written.ts';

const SOUND = {
  format: 'mendline comparison 2',
  version: '0.1.0',
  command: ['compare', 'a.yaml'],
  scenario: { file: 'a.yaml', title: 'A', sha256: 'ab' },
};
const bytes = (text: string) => new TextEncoder().encode(text);
const read = (changed: object) => recordedIn(bytes(JSON.stringify({ ...SOUND, ...changed })));

describe('recordedIn', () => {
  it('reads what a report says of how it was made', () => {
    const supplements = [{ file: 'b.yaml', title: 'B', sha256: 'cd' }];
    expect(read({ supplements })).toMatchObject({
      kind: { command: 'compare', goesTo: 'folder' },
      version: '0.1.0',
      command: SOUND.command,
      inputs: [
        { file: 'a.yaml', sha256: 'ab' },
        { file: 'b.yaml', sha256: 'cd' },
      ],
      file: 'comparison.json',
    });
  });

  it('tells by the command what prints the same kind of document', () => {
    const command = ['run', 'a.yaml', '--json'];
    expect(read({ command })).toMatchObject({ kind: { command: 'run', goesTo: 'output' }, file: null });
  });

  it('reads what an event log says of itself, as a table and in the open standard, and what a page says', () => {
    const files = logFiles(SOURCE(), false);
    for (const { name, content } of files.slice(1)) {
      expect(recordedIn(written(content)), name).toMatchObject({ kind: { command: 'trace' }, file: name });
    }
    expect(recordIn(written(files[0]!.content))).toBeUndefined();
    const page = (madeFrom?: object) => {
      const skip = { id: 'a', text: 'b' };
      const title = '<script type="application/json" id="made-from">{}</script>';
      return framed({
        ...{ name: title, title, kind: 'page', skip, sections: '' },
        ...(madeFrom && { madeFrom }),
      });
    };
    const title = '</script><script>';
    expect(recordIn(bytes(page({ title })))).toEqual({ title });
    expect(recordIn(bytes(page()))).toBeUndefined();
  });

  it('takes a file of an event log that is cut off, or has another run, for one that says nothing', () => {
    const [, parquet, ocel] = logFiles(SOURCE(), false).map(({ content }) => written(content));
    expect(recordIn(parquet!.subarray(0, 200))).toBeUndefined();
    expect(recordIn(bytes(ocel!.toString().replaceAll('run/1', 'run/2')))).toBeUndefined();
    expect(recordIn(bytes('{ "objects": [null, 3, { "id": "run/1" }] }'))).toBeUndefined();
  });

  it.each([
    [{ format: 'mendline explain 1' }, 'its "format" is not that of a report'],
    [{ format: 'mendline comparison 22' }, 'not that of a report; did you mean "mendline comparison 2"?'],
    [{ format: 'mendline crossed experiment 1' }, 'it is not by "cross", but by "compare"'],
    [{ command: undefined }, 'it records no command'],
    [{ command: ['check', 'a.yaml'] }, 'it is not by "compare" or "run", but by "check"'],
    [{ file: '../a' }, '"file" is not as mendline writes it: expected the name of a file'],
    [{ scenario: undefined }, '"scenario" is not as mendline writes it: expected a file with its sha256'],
    [{ command: ['compare', 3] }, '"command.1" is not as mendline writes it'],
    [{ scenario: { file: 'a.yaml' } }, '"scenario.sha256" is not as mendline writes it'],
  ])('says what is wrong with %j', (changed, words) => {
    expect(read(changed)).toContain(words);
  });

  it.each(['', '{', '"compare', 'null', '[]', '3'])('takes %j for no report', (text) => {
    expect(recordedIn(bytes(text))).toMatch(/does not say what it was made from|"format"/);
  });
});
