import { describe, expect, it } from 'vitest';
import { originRows, typed } from '../../src/report/origin.ts';
import { ORIGIN } from './origin-sample.ts';

describe('typed', () => {
  it('quotes what a shell would take apart', () => {
    expect(typed(['compare', 'scenarios/a-b.yaml', '--seeds', '5'])).toBe(
      'mendline compare scenarios/a-b.yaml --seeds 5',
    );
    expect(typed(['compare', 'a b.yaml', '--only', 'say "$x"'])).toBe(
      'mendline compare "a b.yaml" --only "say \\"\\$x\\""',
    );
  });
});

describe('originRows', () => {
  it('tells the files with their hashes, the version, the seeds and the command', () => {
    expect(originRows(ORIGIN).map(([name]) => name)).toEqual([
      ...['scenario', 'SHA-256 of scenario', 'supplement', 'SHA-256 of supplement'],
      ...['version', 'seeds', 'command'],
    ]);
  });

  it('numbers several files of a kind', () => {
    const modules = ['a.ts', 'b.ts'].map((file) => ({ file, sha256: 'ab' }));
    const names = originRows({ ...ORIGIN, modules }).map(([name]) => name);
    expect(names).toContain('policy module 1');
    expect(names).toContain('SHA-256 of policy module 2');
  });
});
