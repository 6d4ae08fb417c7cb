import type { Door, Place, Unloader } from '../place.ts';
import { type Owed, PAST } from './owed.ts';

/** The way out of the line for good parts: what went past a station that does it later is collected there first. */
export class WayOut implements Place {
  private readonly out: Place;
  private readonly owed: readonly Owed[];

  constructor(out: Place, owed: readonly Owed[]) {
    this.out = out;
    this.owed = owed;
  }

  accept(row: number): boolean {
    for (const each of this.owed) {
      if (each.of(row) !== PAST) continue;
      each.collect(row);
      return true;
    }
    return this.out.accept(row);
  }

  wait(machine: Unloader): void {
    this.out.wait(machine);
  }

  doors(row: number): readonly Door[] | null {
    return this.out.doors(row);
  }
}
