import type { Door, Place, Unloader } from '../place.ts';
import { type Owed, PAST } from './owed.ts';

/** How parts that come to a station go past it. */
export type Skipping = 'later' | 'never';

/** The entrance of a station that a policy may let parts go past, to where those go on that leave it. */
export class Bypass implements Place {
  /** Parts that went past. */
  skipped = 0;
  /** Whether a policy may open it: then what is shut may be passed by later, without anything in the way moving. */
  mayTurn = false;
  /** Where the parts of the station go on to. */
  past!: Place;
  /** Null where no part is ever done later. */
  readonly owed: Owed | null;
  private readonly inbox: Place;
  private now: Skipping | null = null;

  constructor(inbox: Place, owed: Owed | null) {
    this.inbox = inbox;
    this.owed = owed;
  }

  /** Lets parts go past from now on; null for into the station. */
  turnTo(skipping: Skipping | null): void {
    this.now = skipping;
    if (this.owed === null) return;
    this.owed.keeps = skipping !== null;
    this.owed.unload();
  }

  /** Whether parts go past just now. */
  get isOpen(): boolean {
    return this.now !== null;
  }

  accept(row: number): boolean {
    if (this.now === null) return this.inbox.accept(row);
    const { owed } = this;
    const before = owed?.of(row) ?? 0;
    // Before it goes, for it may be gone afterwards.
    if (this.now === 'later') owed!.set(row, PAST);
    if (!this.past.accept(row)) {
      owed?.set(row, before);
      return false;
    }
    this.skipped++;
    return true;
  }

  wait(machine: Unloader): void {
    (this.now === null ? this.inbox : this.past).wait(machine);
  }

  doors(row: number): readonly Door[] | null {
    return this.mayTurn ? null : this.inbox.doors(row);
  }
}
