import type { Actor } from '../kernel/calendar.ts';
import type { Sampler } from '../kernel/distributions/distribution.ts';
import type { Curable, Line } from '../line/line.ts';

const BEGIN = 0;
const END = 1;

/** What a disturbance does to the line when it begins and undoes when it ends. */
export interface Effect {
  begin(): void;
  end(): void;
  /** The station at which a fix ends it before its time; undefined when none can. */
  readonly curedAt?: string;
}

export interface Timing {
  readonly at: Sampler;
  readonly lasts: Sampler;
  readonly again: Sampler | null;
}

/** A disturbance in time: begins, ends or is cured, and perhaps comes again. */
export class Episode implements Actor, Curable {
  readonly name: string;
  readonly #line: Line;
  readonly #me: number;
  readonly #effect: Effect;
  readonly #timing: Timing;
  /** Counts endings, so that the planned end of a cured episode is dropped. */
  #stamp = 0;

  constructor(name: string, line: Line, effect: Effect, timing: Timing) {
    this.name = name;
    this.#line = line;
    this.#me = line.calendar.enter(this);
    this.#effect = effect;
    this.#timing = timing;
    const first = timing.at();
    // What is wrong from the start is wrong before the first load.
    if (first === 0) this.#begin();
    else line.calendar.schedule(first, this.#me, BEGIN, 0);
  }

  happen(code: number, stamp: number): void {
    if (code === BEGIN) this.#begin();
    else if (stamp === this.#stamp) this.#end();
  }

  cure(): void {
    this.#end();
  }

  #begin(): void {
    const { calendar, curable } = this.#line;
    this.#effect.begin();
    calendar.schedule(calendar.now + this.#timing.lasts(), this.#me, END, this.#stamp);
    if (this.#effect.curedAt !== undefined) curable.get(this.#effect.curedAt)!.add(this);
  }

  #end(): void {
    const { calendar, curable } = this.#line;
    this.#stamp++;
    if (this.#effect.curedAt !== undefined) curable.get(this.#effect.curedAt)!.delete(this);
    this.#effect.end();
    const { again } = this.#timing;
    if (again) calendar.schedule(calendar.now + again(), this.#me, BEGIN, 0);
  }
}
