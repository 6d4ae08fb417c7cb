import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { Calls, PolicyModuleFault } from '../../../src/policy/module/calls.ts';

const pulse = () => {
  const beats: (number | string)[] = [];
  return { beats, begin: (now: number) => beats.push(now), end: () => beats.push('end') };
};

describe('a call into a module', () => {
  it('is told of once, however many are made within it', () => {
    const heart = pulse();
    const calls = new Calls('code.ts', () => 7, heart);
    calls.into(() => calls.out(() => calls.into(() => undefined)));
    calls.into(() => undefined);
    expect(heart.beats).toEqual([7, 'end', 7, 'end']);
  });

  it('that throws is a fault with the time, and is told to have ended', () => {
    const heart = pulse();
    const calls = new Calls('code.ts', () => 7.25, heart);
    const throws = () => {
      throw new RangeError('too far');
    };
    expect(() => calls.into(throws)).toThrow(PolicyModuleFault);
    expect(heart.beats).toEqual([7.25, 'end']);
    expect(() => new Calls('code.ts', () => 7.25, null).into(throws)).toThrow(
      'at 7.3 s its module code.ts threw: RangeError: too far',
    );
  });

  it('refuses a promise', () => {
    const calls = new Calls('code.ts', () => 0, null);
    expect(() => calls.into(() => Promise.reject(new Error('nobody waits')))).toThrow(
      'returned a promise: a policy acts at once; what is to come later goes by cell.after',
    );
  });

  it('that gives back something like a promise hands it nothing that leads to the engine', () => {
    const calls = new Calls('code.ts', () => 0, null);
    const given: unknown[] = [];
    // biome-ignore lint/suspicious/noThenProperty: that is what is tried.
    const like = { then: (...callbacks: unknown[]) => void given.push(...callbacks) };
    expect(() => calls.into(() => like)).toThrow('returned a promise');
    expect(given.filter((it) => typeof it === 'function').map(Object.getPrototypeOf)).toEqual([null]);
  });

  it('that calls itself for ever by way of the engine is at fault itself', () => {
    const calls = new Calls('code.ts', () => 7, null);
    const again = (): unknown => calls.out(() => [again()]);
    expect(() => calls.into(again)).toThrow('at 7 s its module code.ts calls itself without end');
  });

  it('that gives what throws as it is looked at is at fault itself', () => {
    const calls = new Calls('code.ts', () => 7, null);
    // An error of another context is none of ours.
    const foreign = runInNewContext("new Error('mine')") as unknown;
    const code = () =>
      calls.out(() => {
        throw foreign;
      });
    expect(() => calls.into(code)).toThrow('at 7 s its module code.ts gave what threw: mine');
  });

  it('passes an error of the engine on as it was, though the module caught it', () => {
    const calls = new Calls('code.ts', () => 0, null);
    const own = new Error('of the engine');
    const acts = () =>
      calls.out(() => {
        throw own;
      });
    let seen: unknown;
    const code = () => {
      try {
        acts();
      } catch (thrown) {
        seen = thrown;
      }
    };
    expect(() => calls.into(code)).toThrow(own);
    expect(seen).not.toBe(own);
  });

  it('does nothing more once the run has failed', () => {
    const calls = new Calls('code.ts', () => 0, null);
    let done = 0;
    expect(() =>
      calls.into(() => {
        try {
          calls.refuse('the first');
        } catch {}
        calls.out(() => done++);
      }),
    ).toThrow('the first');
    expect(done).toBe(0);
  });
});
