import { suggestion } from '../../scenario/nearest.ts';
import type { Calls } from './calls.ts';

/** Looked up by the language itself, to turn a thing into text or to see whether it is a promise. */
const ASKED_BY_ITSELF: readonly PropertyKey[] = ['then', 'toJSON', 'toString', 'valueOf', 'constructor'];

/**
 * A function that gives a module nothing but its call: without a prototype there is no way from it to anything else.
 * @param work what it does, in the engine's hands
 */
export function sealed<Args extends readonly unknown[], Given>(
  calls: Calls,
  work: (...args: Args) => Given,
): (...args: Args) => Given {
  const call = (...args: Args) => calls.out(() => work(...args));
  return Object.freeze(Object.setPrototypeOf(call, null));
}

/**
 * What objects for a module inherit from: whatever they do not have themselves is refused, with what there is. Objects
 * that have it cost no more than others.
 * @param of what the object is called in messages
 * @param has the names of what it has
 */
export function guard(calls: Calls, of: string, has: readonly string[]): object {
  return new Proxy(Object.freeze(Object.create(null)), {
    get: (_, key) => {
      if (typeof key === 'symbol' || ASKED_BY_ITSELF.includes(key)) return undefined;
      return calls.out(() =>
        calls.refuse(
          `${of} has no "${key}"${suggestion(key, has)}. A policy sees readings, sights, levels, orders and times; ` +
            'true values are out of its reach',
        ),
      );
    },
  });
}

/**
 * Makes frozen objects over a guard.
 * @param kind their class, for this use alone, with nothing but fields: these are defined, while to set what is not there
 * would go by way of the guard each time
 */
export function mould<Given extends readonly unknown[], Made extends object>(
  over: object,
  kind: new (...given: Given) => Made,
): (...given: Given) => Readonly<Made> {
  Reflect.deleteProperty(kind.prototype, 'constructor');
  Object.freeze(Object.setPrototypeOf(kind.prototype, over));
  return (...given) => Object.freeze(new kind(...given));
}
