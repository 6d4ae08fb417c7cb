/** What is done to an empty machine between cycles: the machine waits until it is told `prepared`. */
interface Upkeep {
  due(): { start(): void } | null;
}

/** What a loaded machine may need before its cycle, or the rest of it; it waits until it is told `warm`. */
interface Warming {
  readonly isNeeded: boolean;
  start(): void;
}

/** Puts loads on and takes them off; the machine waits until it is told `handledIn` or `handledOut`. */
interface LoadHandling {
  /** Seconds of each; none where 0. */
  readonly load: number;
  readonly unload: number;
  putOn(): void;
  takeOff(): void;
}

/** What is done to a machine around its cycles. */
export interface Care {
  readonly upkeep: Upkeep | null;
  readonly warmUp: Warming | null;
  readonly handling: LoadHandling | null;
}
