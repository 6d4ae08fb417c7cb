import { Script } from 'node:vm';

/**
 * What of the language a policy module has, by name: what gives the same on every run and every Node. Whatever else a
 * context comes with is taken out, so that a newer Node does not bring in more.
 */
const KEPT = [
  ...[
    'Object',
    'Function',
    'Array',
    'Number',
    'Boolean',
    'String',
    'Symbol',
    'BigInt',
    'Math',
    'JSON',
    'Reflect',
  ],
  ...['Proxy', 'RegExp', 'Map', 'Set', 'WeakMap', 'WeakSet', 'globalThis', 'undefined', 'Infinity', 'NaN'],
  ...[
    'Error',
    'AggregateError',
    'EvalError',
    'RangeError',
    'ReferenceError',
    'SyntaxError',
    'TypeError',
    'URIError',
  ],
  ...['ArrayBuffer', 'DataView', 'Int8Array', 'Uint8Array', 'Uint8ClampedArray', 'Int16Array', 'Uint16Array'],
  ...['Int32Array', 'Uint32Array', 'Float32Array', 'Float64Array', 'BigInt64Array', 'BigUint64Array'],
  ...['parseFloat', 'parseInt', 'isFinite', 'isNaN', 'decodeURI', 'decodeURIComponent', 'encodeURI'],
  ...['encodeURIComponent', 'exports', 'require'],
];

const CLOCK = 'the time of the run is cell.now';
const LATER = 'a policy acts at once; what is to come later goes by cell.after';
const OUTSIDE = 'a policy module has the language and the cell, and nothing else';

/** What a policy might reach for, and what there is instead. */
const REFUSED: Readonly<Record<string, string>> = {
  Date: CLOCK,
  performance: CLOCK,
  Promise: LATER,
  setTimeout: LATER,
  setInterval: LATER,
  setImmediate: LATER,
  queueMicrotask: LATER,
  crypto: 'random numbers come from cell.random',
  console: 'to see a value, throw it as an error',
  process: OUTSIDE,
  Buffer: OUTSIDE,
  fetch: OUTSIDE,
};

/** Methods whose answer depends on the country that the computer is set to. */
const LOCAL = {
  Object: ['toLocaleString'],
  Number: ['toLocaleString'],
  BigInt: ['toLocaleString'],
  Array: ['toLocaleString'],
  String: ['localeCompare', 'toLocaleLowerCase', 'toLocaleUpperCase'],
};

/** Code that a context runs before anything else. What it throws is of the context's own kind. */
export const HARDEN = new Script(`'use strict';
((kept, refused, local) => {
  const refuse = (name, why) => () => { throw new Error(name + ' is out of reach here: ' + why); };
  for (const name of Reflect.ownKeys(globalThis)) if (!kept.includes(name)) delete globalThis[name];
  for (const name of Object.keys(refused))
    Object.defineProperty(globalThis, name, { get: refuse(name, refused[name]), configurable: false });
  Math.random = refuse('Math.random', 'random numbers come from cell.random, the same ones under the same seed');
  for (const name of Object.keys(local)) for (const method of local[name]) delete globalThis[name].prototype[method];
  globalThis.exports = {};
  globalThis.require = (name) => {
    throw new Error('imports "' + name + '": a policy module is one file and imports types alone');
  };
})(${JSON.stringify(KEPT)}, ${JSON.stringify(REFUSED)}, ${JSON.stringify(LOCAL)});`);
