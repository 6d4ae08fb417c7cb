import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Law } from '../kernel/distributions/index.ts';
import type { Line } from '../line/line.ts';
import type { Course } from '../line/upset.ts';

/**
 * What a disturbance does to the line when it begins and undoes when it has ended. What has a size does, at any time, its
 * size times the level of its course, which goes from 0 to 1 and back: at once (a step, a pulse), over its ramp (a ramp,
 * a drift, a degradation), and as it fades.
 */
export interface Effect {
  begin(): void;
  end(): void;
  /**
   * Called where its level is another, for what cannot be asked for its level when it matters, such as plans of the
   * calendar: when it begins and has ended, and step by step while it builds up and fades.
   * @param at the time whose level counts, s
   */
  changed?(at: number): void;
  /** The station at which a fix ends it before its time; undefined when none can. */
  readonly curedAt?: string;
}

/** What an effect is made with. */
export interface Making {
  readonly line: Line;
  readonly course: Course;
  /** Draws of a size, by a stream of the disturbance's own. */
  readonly draw: (purpose: string, law: Law) => Sampler;
}

/** Two things that begin and end together. */
export const both = (one: Effect, other: Effect): Effect => ({
  begin: () => {
    one.begin();
    other.begin();
  },
  end: () => {
    one.end();
    other.end();
  },
});
