import type { Hand } from './hand.ts';
import type { Door, Place } from './place.ts';
import type { Tally } from './tally.ts';

/** Parts that were worked on without one of their mates and wait for it beside their station, the oldest first. */
export class Aside implements Place {
  private readonly parts: { readonly row: number; readonly hand: Hand }[] = [];
  /** What those have that are on their way here, by row. */
  private readonly coming = new Map<number, Hand>();
  private readonly tally: Tally;
  private readonly told: () => void;

  /** @param told called when a part has come */
  constructor(tally: Tally, told: () => void) {
    this.tally = tally;
    this.told = told;
  }

  /** Parts that are here. */
  get count(): number {
    return this.parts.length;
  }

  /** Parts that are here or on their way. */
  get all(): number {
    return this.parts.length + this.coming.size;
  }

  /** A part will come, with what was joined to it. */
  expect(row: number, hand: Hand): void {
    this.coming.set(row, hand);
  }

  accept(row: number): boolean {
    this.parts.push({ row, hand: this.coming.get(row)! });
    this.coming.delete(row);
    this.tally.setAside++;
    this.told();
    return true;
  }

  /** Takes out the oldest part; there must be one. */
  take(): { readonly row: number; readonly hand: Hand } {
    return this.parts.shift()!;
  }

  wait(): void {
    throw new Error('there is always room for a part that is put aside');
  }

  doors(): readonly Door[] | null {
    return null;
  }
}
