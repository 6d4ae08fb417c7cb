import { describe, expect, it } from 'vitest';
import { Calls } from '../../../src/policy/module/calls.ts';
import type { Cell, Reading } from '../../../src/policy/module/cell.ts';
import { guard, mould } from '../../../src/policy/module/sealed.ts';
import { gaugedCell, small } from '../../line/small-line.ts';
import { ranWith } from './run-code.ts';

/** Every object and function that can be come by from `from`, by properties, what reads them, and prototypes. */
function reachable(from: unknown, found = new Set<object>()): Set<object> {
  if ((typeof from !== 'object' && typeof from !== 'function') || from === null || found.has(from))
    return found;
  found.add(from);
  for (const { value, get, set } of Object.values(Object.getOwnPropertyDescriptors(from)))
    for (const next of [value, get, set]) reachable(next, found);
  return reachable(Object.getPrototypeOf(from), found);
}

describe('what a module gets hold of', () => {
  it('leads to nothing but itself: no prototype of the program, no field of the line', () => {
    const given: unknown[] = [];
    const body = gaugedCell({ rim: 'tolerance: 0.5 mm' });
    ranWith(small('100 s', body), (cell: Cell) => {
      given.push(cell, cell.drawn('rim'), cell.random('one'), cell.times('5 s', 'other'));
      given.push(cell.switching({ do: 'hold', station: 'forming' }));
      cell.onMarkedReading('rim', 'heater', (reading) => given.push(reading));
    });
    expect(given.length).toBe(5 + 9);
    const own = given.flatMap((one) => [...reachable(one)]);
    expect(own.length).toBeGreaterThan(18);
    for (const one of own) {
      expect(Object.isFrozen(one)).toBe(true);
      if (typeof one === 'function') expect(Object.getPrototypeOf(one)).toBeNull();
      expect(one === Object.prototype || one === Function.prototype).toBe(false);
    }
  });

  it('takes no part of the program even from what is thrown into it', () => {
    let caught: unknown;
    const run = () =>
      ranWith(small('100 s', gaugedCell()), (cell) => {
        try {
          cell.hold('nowhere');
        } catch (thrown) {
          caught = thrown;
        }
      });
    // It caught it, and yet the run has ended.
    expect(run).toThrow('hold: "nowhere" is no station');
    expect(Object.isFrozen(caught)).toBe(true);
    expect(Object.getPrototypeOf(caught)).toBeNull();
    expect(Object.keys(caught as object)).toEqual(['message']);
  });
});

describe('a guard', () => {
  it('refuses what is not there, with what is, and gives what is', () => {
    const see = (look: (reading: Reading) => unknown) => () =>
      ranWith(small('100 s', gaugedCell()), (cell) => cell.onMarkedReading('rim', 'heater', look));
    expect(
      see(({ value, aim, adjustedThen }) => expect([value, aim, adjustedThen]).toEqual([100, 100, 0])),
    ).not.toThrow();
    expect(see((reading) => (reading as never as { truth: number }).truth)).toThrow(
      /at 11 s its module code\.ts asks for what cannot be.*: a reading has no "truth"; known here: value, aim, adjustedThen\. .*true values are out of its reach/,
    );
    expect(see((reading) => (reading as never as { valu: number }).valu)).toThrow('did you mean "value"?');
  });

  it('lets the language ask what it asks by itself', () => {
    const calls = new Calls('code.ts', () => 0, null);
    const one = mould(
      guard(calls, 'one', ['a']),
      class {
        a = 1;
      },
    )();
    expect(JSON.stringify(one)).toBe('{"a":1}');
    expect({ ...one }).toEqual({ a: 1 });
    expect((one as { then?: unknown }).then).toBeUndefined();
  });
});
