import alea from 'seedrandom/lib/alea.js';

/** A source of uniform numbers in [0, 1). */
export type Stream = () => number;

/** Hands out one independent stream per purpose, each decided by the seed and the purpose's name alone. */
export class Streams {
  readonly #seed: number;

  constructor(seed: number) {
    this.#seed = seed;
  }

  /** A fresh stream for `purpose`. Asking twice for one purpose gives the same numbers twice. */
  of(purpose: string): Stream {
    return alea(`${this.#seed}|${purpose}`);
  }
}
