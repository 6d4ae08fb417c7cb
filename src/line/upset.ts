import type { Calendar } from '../kernel/calendar.ts';

/** How much of a disturbance is there: from 0 over its ramp to 1, and back to 0 over the time in which it fades. */
export class Course {
  /** Seconds; 0 for a step. */
  readonly ramp: number;
  readonly fades: number;
  private begun = 0;
  private fadesFrom = Number.POSITIVE_INFINITY;
  /** How far it had come when it began to fade. */
  private top = 1;

  constructor(ramp = 0, fades = 0) {
    this.ramp = ramp;
    this.fades = fades;
  }

  begin(now: number): void {
    this.begun = now;
    this.fadesFrom = Number.POSITIVE_INFINITY;
  }

  fade(now: number): void {
    this.top = this.level(now);
    this.fadesFrom = now;
  }

  level(now: number): number {
    if (now >= this.fadesFrom) return this.top * Math.max(0, 1 - (now - this.fadesFrom) / this.fades);
    return this.ramp > 0 ? Math.min(1, (now - this.begun) / this.ramp) : 1;
  }
}

/** A change that nobody asked for: so much of its size as its course says. */
export class Upset {
  size = 0;
  private readonly course: Course;

  constructor(course: Course) {
    this.course = course;
  }

  at(now: number): number {
    return this.size * this.course.level(now);
  }
}

/** The changes of one thing that are there now. */
export class Upsets {
  private readonly there = new Set<Upset>();
  private readonly calendar: Calendar;

  constructor(calendar: Calendar) {
    this.calendar = calendar;
  }

  add(upset: Upset): void {
    this.there.add(upset);
  }

  delete(upset: Upset): void {
    this.there.delete(upset);
  }

  /** All changes together. */
  sum(at = this.calendar.now): number {
    let sum = 0;
    for (const upset of this.there) sum += upset.at(at);
    return sum;
  }

  /** What is left of 1, or has become of it, when each change has taken its share of what the others left. */
  factor(at = this.calendar.now): number {
    let factor = 1;
    for (const upset of this.there) factor *= Math.max(0, 1 + upset.at(at));
    return factor;
  }
}
