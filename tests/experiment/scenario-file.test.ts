import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
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
});
