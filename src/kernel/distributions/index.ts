import { inBlocks } from '../blocks.ts';
import type { Stream } from '../streams.ts';
import { constant } from './constant.ts';
import type { Distribution, Fill, Sampler } from './distribution.ts';
import { empirical } from './empirical.ts';
import { exponential } from './exponential.ts';
import { gamma } from './gamma.ts';
import { geometric } from './geometric.ts';
import { lognormal } from './lognormal.ts';
import { normal } from './normal.ts';
import { triangular } from './triangular.ts';
import { uniform } from './uniform.ts';
import { weibull } from './weibull.ts';

const catalogue = {
  constant,
  uniform,
  triangular,
  normal,
  lognormal,
  gamma,
  weibull,
  exponential,
  geometric,
  empirical,
};

type Catalogue = typeof catalogue;

/** A distribution by name with its unit-free parameters, for instance `{distribution: 'gamma', mean: 40, sd: 4}`. */
export type Law = {
  [Name in keyof Catalogue]: { readonly distribution: Name } & (Catalogue[Name] extends Distribution<infer P>
    ? P
    : never);
}[keyof Catalogue];

// Each law carries the parameters of the very distribution it names, which the type checker cannot follow.
const of = (law: Law) => catalogue[law.distribution] as Distribution<Law>;

/** The mean of the law, in the unit of its parameters. */
export const meanOf = (law: Law): number => of(law).mean(law);

/** The variance of the law. */
export const varianceOf = (law: Law): number => of(law).variance(law);

/** Draws blocks from the law with the numbers of `stream`. */
export const fillOf = (law: Law, stream: Stream): Fill => of(law).fill(law, stream);

/** A sampler that draws from the law with the numbers of `stream`, ahead, so the stream must serve nobody else. */
export const samplerOf = (law: Law, stream: Stream): Sampler => inBlocks(fillOf(law, stream));
