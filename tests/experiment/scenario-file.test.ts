import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readScenario, UnreadableFileError } from '../../src/experiment/scenario-file.ts';

const path = fileURLToPath(new URL('../../scenarios/two-stations.yaml', import.meta.url));

describe('readScenario', () => {
  it('gives the scenario with the text it was read from and the digest of that text', () => {
    const read = readScenario(path);
    const bytes = readFileSync(path);
    expect(read.text).toBe(bytes.toString('utf8'));
    expect(read.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
    expect(read.scenario.stations.map(({ name }) => name)).toEqual(['first', 'second']);
  });

  it('says why a file cannot be read', () => {
    expect(() => readScenario(`${path}.gone`)).toThrow(UnreadableFileError);
    expect(() => readScenario(`${path}.gone`)).toThrow('there is no such file');
    expect(() => readScenario(fileURLToPath(new URL('.', import.meta.url)))).toThrow('this is a folder');
  });

  it('reads what is joined to it, each with its digest', () => {
    const demo = fileURLToPath(new URL('../../scenarios/tray-cell.yaml', import.meta.url));
    const other = fileURLToPath(new URL('../../scenarios/policies/retune-by-readings.yaml', import.meta.url));
    const { scenario, supplements, sha256 } = readScenario(demo, [other]);
    expect(sha256).toBe(readScenario(demo).sha256);
    expect(scenario.policies.at(-1)!.name).toBe('retune by readings');
    expect(supplements).toMatchObject([
      { path: other, sha256: createHash('sha256').update(readFileSync(other)).digest('hex') },
    ]);
    expect(() => readScenario(demo, [`${other}.gone`])).toThrow('name a supplement, such as');
  });

  it('names a supplement that is there where it asks for one', () => {
    const named = /such as (\S+)/;
    for (const [line, joined] of [
      ['gone.yaml', []],
      [path, ['gone.yaml']],
    ] as const) {
      let said = '';
      try {
        readScenario(line, joined);
      } catch (error) {
        said = (error as Error).message;
      }
      const [, example] = named.exec(said)!;
      expect(existsSync(new URL(`../../${example}`, import.meta.url)), example).toBe(true);
    }
  });
});
