import type { Door, Place, Unloader } from './place.ts';

/** The way on from a station: the one its parts always go, or another while a policy says so. */
export class Detour implements Place {
  /** Parts that went the other way. */
  turned = 0;
  /** Whether a policy may turn it: then what is shut may be passed by later, without anything in the way moving. */
  mayTurn = false;
  private readonly usual: Place;
  private other: Place | null = null;

  constructor(usual: Place) {
    this.usual = usual;
  }

  /** Leads there from now on; null for the way parts always go. */
  turnTo(other: Place | null): void {
    this.other = other;
  }

  accept(row: number): boolean {
    if (this.other === null) return this.usual.accept(row);
    if (!this.other.accept(row)) return false;
    this.turned++;
    return true;
  }

  wait(machine: Unloader): void {
    (this.other ?? this.usual).wait(machine);
  }

  doors(row: number): readonly Door[] | null {
    return this.mayTurn ? null : this.usual.doors(row);
  }
}
