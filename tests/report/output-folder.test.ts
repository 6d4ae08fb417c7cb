import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { OutputFolder } from '../../src/report/output-folder.ts';

let at: string;
beforeEach(() => {
  at = mkdtempSync(join(tmpdir(), 'mendline-test-'));
});
afterEach(() => rmSync(at, { recursive: true, force: true }));

describe('OutputFolder', () => {
  it('writes text and bytes, in folders of its own too, and leaves no drafts', () => {
    const folder = new OutputFolder(join(at, 'a', 'b'));
    folder.write('x.txt', 'ä');
    folder.write('charts/y.bin', new Uint8Array([0, 255]));
    expect(readdirSync(folder.path).sort()).toEqual(['charts', 'x.txt']);
    expect(readFileSync(join(folder.path, 'x.txt'), 'utf8')).toBe('ä');
    expect([...readFileSync(join(folder.path, 'charts', 'y.bin'))]).toEqual([0, 255]);
    expect(readdirSync(join(folder.path, 'charts'))).toEqual(['y.bin']);
  });

  it('is left as it was where it was only tried, and made by the first file', () => {
    const folder = OutputFolder.tried(join(at, 'a', 'b'));
    expect(readdirSync(at)).toEqual([]);
    folder.write('x.txt', 'x');
    expect(readdirSync(folder.path)).toEqual(['x.txt']);
    OutputFolder.tried(folder.path);
    expect(readdirSync(folder.path)).toEqual(['x.txt']);
  });

  it('writes what comes by pieces, text and bytes, in their order', () => {
    const pieces = function* () {
      yield 'a';
      yield 'ä'.repeat(1_500_000);
      yield new Uint8Array([1, 2]);
      yield 'z';
    };
    const path = new OutputFolder(at).write('x', pieces());
    const read = readFileSync(path);
    expect(read.equals(Buffer.concat([...pieces()].map((piece) => Buffer.from(piece as string))))).toBe(true);
  });

  it('says where a file stands in the way of a folder', () => {
    const folder = new OutputFolder(at);
    writeFileSync(join(at, 'charts'), '');
    expect(() => folder.write('charts/y.svg', '')).toThrow('a file stands where a folder should be');
    folder.removeAll('charts', /./);
    expect(existsSync(join(at, 'charts'))).toBe(true);
  });

  it('removes what matches, and the folder where nothing else was in it', () => {
    const folder = new OutputFolder(at);
    folder.removeAll('charts', /^x/);
    for (const name of ['x1', 'x2', 'y']) folder.write(`charts/${name}`, '');
    folder.removeAll('charts', /^x/);
    expect(readdirSync(join(at, 'charts'))).toEqual(['y']);
    folder.removeAll('charts', /^x/);
    expect(existsSync(join(at, 'charts'))).toBe(true);
    folder.removeAll('charts', /^y/);
    expect(existsSync(join(at, 'charts'))).toBe(false);
  });
});
