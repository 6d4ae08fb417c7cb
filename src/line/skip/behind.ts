import type { Door, Place, Unloader } from '../place.ts';
import { LAST, type Owed } from './owed.ts';

/** Where the parts of a station go on to that some went past: one that is done in the end has been everywhere else and leaves. */
export class Behind implements Place {
  private readonly next: Place;
  private readonly out: Place;
  private readonly owed: Owed;
  /** Where the last part was refused. */
  private refusedAt: Place;

  constructor(next: Place, out: Place, owed: Owed) {
    this.next = next;
    this.out = out;
    this.owed = owed;
    this.refusedAt = next;
  }

  accept(row: number): boolean {
    const before = this.owed.of(row);
    if (before === 0) return this.offer(row, this.next);
    // It is owed nothing any more. Before it goes, for it may be gone afterwards.
    this.owed.set(row, 0);
    if (this.offer(row, before === LAST ? this.out : this.next)) return true;
    this.owed.set(row, before);
    return false;
  }

  wait(machine: Unloader): void {
    this.refusedAt.wait(machine);
  }

  doors(row: number): readonly Door[] | null {
    return (this.owed.of(row) === LAST ? this.out : this.next).doors(row);
  }

  private offer(row: number, place: Place): boolean {
    this.refusedAt = place;
    return place.accept(row);
  }
}
