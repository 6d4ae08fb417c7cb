import { driftingFeature } from './drifting-feature.ts';
import { randomArrivals } from './random-arrivals.ts';
import { randomDemand } from './random-demand.ts';
import type { Theory } from './theory.ts';
import { twoExponential } from './two-exponential.ts';

/** All that an exercise may name. */
export const THEORIES: readonly Theory[] = [twoExponential, randomArrivals, randomDemand, driftingFeature];

export const theoryNamed = (name: string): Theory | undefined => THEORIES.find((one) => one.name === name);
