/** What a part must pass to get into a buffer. */
export interface Door {
  readonly open: boolean;
  /** The station behind. */
  readonly consumer: Consumer;
}

/** Where a finished part may go: a buffer, a way out, or a choice among them. */
export interface Place {
  /** Takes the part in if there is room, and says whether it did. */
  accept(row: number): boolean;
  /** After a refusal: the machine will be told to unload when there is room again. */
  wait(machine: Unloader): void;
  /** After a refusal: the doors of which one must open before the part can enter; null when room comes by itself. */
  doors(row: number): readonly Door[] | null;
}

/** Passes on what it has finished when told that there is room. */
export interface Unloader {
  unload(): void;
}

/** A machine that may be blocked: where its next finished part wants to go, null while it is not blocked. */
export interface Waiter {
  readonly name: string;
  readonly blockedAt: Place | null;
  /** The row of that part. */
  readonly blockedRow: number;
}

/** Draws parts from a buffer: a machine, or a station of several. */
export interface Consumer {
  readonly name: string;
  readonly machines: readonly Waiter[];
  /** Whether a part handed over now would be started on at once. */
  readonly couldStart: boolean;
  /** Something it may have waited for has come. */
  wake(): void;
}
