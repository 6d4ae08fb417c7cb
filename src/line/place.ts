/** Where a finished part may go: a buffer or a way out. */
export interface Place {
  /** Takes the part in if there is room, and says whether it did. */
  accept(row: number): boolean;
  /** The station will be told to unload when there is room again. */
  wait(station: Unloader): void;
}

/** Passes on what it has finished when told that there is room. */
export interface Unloader {
  unload(): void;
}

/** Draws parts from a buffer. */
export interface Consumer {
  readonly name: string;
  /** Whether a part handed over now would be started on at once. */
  readonly couldStart: boolean;
  /** Something it may have waited for has come. */
  wake(): void;
}
