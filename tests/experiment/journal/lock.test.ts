import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Lock } from '../../../src/experiment/journal/lock.ts';
import { runs, thisProcess } from '../../../src/experiment/journal/owner.ts';
import { inFolder } from './made-up.ts';

/** A process that has ended. */
async function ended(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '']);
  await once(child, 'exit');
  return child.pid!;
}

const dead = { ...thisProcess(), pid: await ended() };

describe('runs', () => {
  it('knows a process that runs and one that does not', () => {
    expect(runs(thisProcess())).toBe(true);
    expect(runs(dead)).toBe(false);
  });

  it.runIf(process.platform === 'linux')('tells a process from a later one of its number', () => {
    expect(runs({ ...thisProcess(), birth: 'another boot 1' })).toBe(false);
  });

  it('takes the number alone where the system says no more', () => {
    expect(runs({ ...thisProcess(), birth: null })).toBe(true);
    expect(runs({ ...dead, birth: null })).toBe(false);
  });

  it('does not judge a process of another machine', () => {
    expect(runs({ ...dead, host: `${hostname()}-other` })).toBeNull();
    expect(runs({ ...dead, world: 'pid:[1]' })).toBeNull();
  });
});

describe('a lock', () => {
  const at = (folder: string) => join(folder, 'lock');

  it('keeps a second one out until it is released', () => {
    inFolder((folder) => {
      const lock = new Lock(at(folder));
      expect(() => new Lock(at(folder))).toThrow(`process ${process.pid} has been writing`);
      lock.release();
      expect(readdirSync(folder)).toEqual([]);
      new Lock(at(folder)).release();
    });
  });

  it.each([
    ['of a dead process', JSON.stringify(dead)],
    ['that says nothing, its writer having been killed', ''],
  ])('%s keeps nobody out, and the one that takes its place does', (_, text) => {
    inFolder((folder) => {
      writeFileSync(at(folder), text);
      const lock = new Lock(at(folder));
      expect(() => new Lock(at(folder))).toThrow(`process ${process.pid} has been writing`);
      expect(readdirSync(folder)).toEqual(['lock']);
      lock.release();
      expect(readdirSync(folder)).toEqual([]);
    });
  });

  it('is taken behind any number of dead ones, which then go', () => {
    inFolder((folder) => {
      const text = (since: number) => JSON.stringify({ ...dead, since: new Date(since).toISOString() });
      writeFileSync(at(folder), text(0));
      let before = `${dead.pid}-0`;
      for (let depth = 1; depth <= 50; depth++) {
        writeFileSync(`${at(folder)}.${depth}-${before}`, text(depth));
        before = `${dead.pid}-${depth}`;
      }
      const lock = new Lock(at(folder));
      expect(readdirSync(folder)).toEqual(['lock']);
      expect(() => new Lock(at(folder))).toThrow(`process ${process.pid} has been writing`);
      lock.release();
      expect(readdirSync(folder)).toEqual([]);
    });
  });

  it('of another machine keeps everyone out and says what to do', () => {
    inFolder((folder) => {
      writeFileSync(at(folder), JSON.stringify({ ...dead, host: 'elsewhere' }));
      expect(() => new Lock(at(folder))).toThrow(
        `process ${dead.pid} on elsewhere began to write runs here at ${dead.since}, and it cannot be told from here whether it still does; if it does not, delete ${at(folder)}`,
      );
    });
  });

  it('cannot be made in a folder that is not there', () => {
    inFolder((folder) => {
      expect(() => new Lock(join(folder, 'none', 'lock'))).toThrow('no folder can be made here');
    });
  });
});
