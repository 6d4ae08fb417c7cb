// The generator alone, without the part of the package that asks Node for entropy.
declare module 'seedrandom/lib/alea.js' {
  export default function alea(seed: string): () => number;
}
