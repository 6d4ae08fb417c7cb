import { standardNormal } from '../../src/kernel/distributions/normal.ts';
import { Streams } from '../../src/kernel/streams.ts';

/** Standard normal numbers of a seed. */
export const normals = (seed: number): (() => number) => standardNormal(new Streams(seed).of('normals'));
