import type { Actor } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Curable, Line } from '../line/line.ts';
import type { Course } from '../line/upset.ts';
import type { Effect } from './effect.ts';

const BEGIN = 0;
/** It has lasted: it ends, or begins to fade. */
const OVER = 1;
const END = 2;
const STEP = 3;

/** In so many steps an effect that has to be told follows its course up or down. */
const STEPS = 20;

export interface Timing {
  /** Null where something else calls for it. */
  readonly at: Sampler | null;
  readonly lasts: Sampler;
  readonly again: Sampler | null;
  readonly burst: { readonly times: number; readonly apart: Sampler } | null;
}

/** A disturbance in time: begins, ends or is cured, and perhaps comes again. */
export class Episode implements Actor, Curable {
  readonly name: string;
  readonly #line: Line;
  readonly #me: number;
  readonly #effect: Effect;
  readonly #course: Course;
  readonly #timing: Timing;
  /** Counts endings and beginnings of fading, so that what was planned before is dropped. */
  #stamp = 0;
  /** How often it still comes in this burst, the present time included. */
  #left = 0;
  /** The way up or down that is told in steps: from when, for how long, and the number of the next step. */
  #way = { from: 0, takes: 0, step: 0 };

  constructor(name: string, line: Line, effect: Effect, course: Course, timing: Timing) {
    this.name = name;
    this.#line = line;
    this.#me = line.calendar.enter(this);
    this.#effect = effect;
    this.#course = course;
    this.#timing = timing;
    const first = timing.at?.();
    // What is wrong from the start is wrong before the first load.
    if (first === 0) this.#begin();
    else if (first !== undefined) line.calendar.schedule(first, this.#me, BEGIN, 0);
  }

  /** Comes now: by way of the calendar, since whoever calls for it is not done yet. */
  come(): void {
    this.#line.calendar.schedule(this.#line.calendar.now, this.#me, BEGIN, 0);
  }

  happen(code: number, stamp: number): void {
    if (code === BEGIN) this.#begin();
    else if (stamp !== this.#stamp) return;
    else if (code === STEP) this.#tell();
    else if (code === OVER && this.#course.fades > 0) this.#fade();
    else this.#end();
  }

  cure(): void {
    this.#end();
  }

  #begin(): void {
    const { calendar, curable, episodes } = this.#line;
    episodes?.begin(this.name, calendar.now);
    if (this.#left === 0) this.#left = this.#timing.burst?.times ?? 1;
    this.#course.begin(calendar.now);
    this.#effect.begin();
    calendar.schedule(calendar.now + this.#timing.lasts(), this.#me, OVER, this.#stamp);
    if (this.#effect.curedAt !== undefined) curable.get(this.#effect.curedAt)!.add(this);
    this.#goOver(this.#course.ramp);
  }

  #fade(): void {
    const { calendar } = this.#line;
    this.#stamp++;
    this.#course.fade(calendar.now);
    calendar.schedule(calendar.now + this.#course.fades, this.#me, END, this.#stamp);
    this.#goOver(this.#course.fades);
  }

  #end(): void {
    const { calendar, curable, episodes } = this.#line;
    episodes?.end(this.name, calendar.now);
    this.#stamp++;
    if (this.#effect.curedAt !== undefined) curable.get(this.#effect.curedAt)!.delete(this);
    this.#effect.end();
    this.#effect.changed?.(calendar.now);
    const { again, burst } = this.#timing;
    this.#left--;
    const pause = this.#left > 0 ? burst!.apart : again;
    if (pause) calendar.schedule(calendar.now + pause(), this.#me, BEGIN, 0);
  }

  /** Goes up or down over so many seconds, and tells the effect where it has to be told. */
  #goOver(takes: number): void {
    if (this.#effect.changed === undefined) return;
    this.#way = { from: this.#line.calendar.now, takes, step: 0 };
    this.#tell();
  }

  /** Tells of each step by the level in its middle, and of the end by that of the end. */
  #tell(): void {
    const { from, takes, step } = this.#way;
    const last = takes === 0 || step === STEPS;
    this.#effect.changed!(last ? from + takes : from + ((step + 0.5) / STEPS) * takes);
    if (last) return;
    this.#way.step++;
    this.#line.calendar.schedule(from + (this.#way.step / STEPS) * takes, this.#me, STEP, this.#stamp);
  }
}
