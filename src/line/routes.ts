import type { Stream } from '../kernel/streams.ts';
import type { PartTable } from './part-table.ts';
import type { Door, Place, Unloader } from './place.ts';

/** One of several ways on. */
export interface Way {
  readonly place: Place;
  /** Chance of it, where ways are drawn. */
  readonly share: number;
  /** How busy the station there is and whether it is up; a way out of the line is never busy. */
  readonly crowd: () => number;
  readonly up: () => boolean;
}

/** The luck of parts at a branch: a column drawn at birth, and draws for later visits. */
export interface BranchLuck {
  readonly column: number;
  readonly again: Stream;
}

/** Each part goes the way that its luck gives it, and waits there if it must. */
export class ByShare implements Place {
  readonly #ways: readonly Way[];
  readonly #parts: PartTable;
  readonly #luck: BranchLuck;
  /** Where the last part was refused. */
  #refusedAt: Place | null = null;

  constructor(ways: readonly Way[], parts: PartTable, luck: BranchLuck) {
    this.#ways = ways;
    this.#parts = parts;
    this.#luck = luck;
  }

  accept(row: number): boolean {
    const place = this.#wayOf(row);
    const luck = this.#parts.get(row, this.#luck.column);
    // Before it goes, for it may be gone afterwards.
    this.#parts.set(row, this.#luck.column, Number.NaN);
    if (place.accept(row)) return true;
    this.#parts.set(row, this.#luck.column, luck);
    this.#refusedAt = place;
    return false;
  }

  wait(machine: Unloader): void {
    this.#refusedAt!.wait(machine);
  }

  doors(row: number): readonly Door[] | null {
    return this.#wayOf(row).doors(row);
  }

  #wayOf(row: number): Place {
    let luck = this.#parts.get(row, this.#luck.column);
    if (Number.isNaN(luck)) {
      luck = this.#luck.again();
      this.#parts.set(row, this.#luck.column, luck);
    }
    for (const { place, share } of this.#ways) {
      luck -= share;
      if (luck < 0) return place;
    }
    return this.#ways.at(-1)!.place;
  }
}

/** Each part goes the first way that has room, in the order given or in one found anew each time. */
export class ByRoom implements Place {
  readonly #ways: Way[];
  readonly #reorder: boolean;

  /** @param byState prefer stations that are up, and of these the one with fewest parts; else keep the order */
  constructor(ways: readonly Way[], byState: boolean) {
    this.#ways = [...ways];
    this.#reorder = byState;
  }

  accept(row: number): boolean {
    for (const { place } of this.#inOrder()) if (place.accept(row)) return true;
    return false;
  }

  wait(machine: Unloader): void {
    for (const { place } of this.#ways) place.wait(machine);
  }

  doors(row: number): readonly Door[] | null {
    const doors = this.#ways.map(({ place }) => place.doors(row));
    return doors.includes(null) ? null : doors.flatMap((door) => door ?? []);
  }

  #inOrder(): readonly Way[] {
    if (!this.#reorder) return this.#ways;
    const found = this.#ways.map((way) => ({ way, up: way.up(), crowd: way.crowd() }));
    // Equals keep the order in which they were given.
    found.sort((a, b) => Number(b.up) - Number(a.up) || a.crowd - b.crowd);
    return found.map(({ way }) => way);
  }
}
