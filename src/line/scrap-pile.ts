import type { Place } from './place.ts';
import type { ScrapCause } from './scrap-causes.ts';

/** The way to scrap from one station for one cause; it always has room. */
export class ScrapPile implements Place {
  readonly station: string;
  readonly cause: ScrapCause;
  /** Parts that went this way, from the start of the run on. */
  parts = 0;
  private readonly out: Place;

  constructor(station: string, cause: ScrapCause, out: Place) {
    this.station = station;
    this.cause = cause;
    this.out = out;
  }

  accept(row: number): boolean {
    this.parts++;
    return this.out.accept(row);
  }

  wait(): void {
    throw new Error('scrap always has room');
  }

  doors(): null {
    return null;
  }
}
