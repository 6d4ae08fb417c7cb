import type { Pulse } from '../policy/module/calls.ts';

/**
 * Memory that the workers and the main thread share: for each run the number of times that code of its policy module
 * was called and came back, so odd while a call is under way, and the simulated time of the last call. A thread that
 * is caught in a loop can say nothing any more, but this can be seen.
 */
export class ModulePulses {
  readonly memory: SharedArrayBuffer;
  private readonly times: Float64Array;
  private readonly turns: Int32Array;

  constructor(runs: number, memory = new SharedArrayBuffer(runs * 12)) {
    this.memory = memory;
    this.times = new Float64Array(memory, 0, runs);
    this.turns = new Int32Array(memory, runs * 8, runs);
  }

  /** The pulse of one run, for the worker that does it. */
  of(run: number): Pulse {
    const { times, turns } = this;
    return {
      begin: (now) => {
        times[run] = now;
        Atomics.add(turns, run, 1);
      },
      end: () => {
        Atomics.add(turns, run, 1);
      },
    };
  }

  /** Which call of the run's module is under way; null while none is. */
  callOf(run: number): number | null {
    const turn = Atomics.load(this.turns, run);
    return turn % 2 === 0 ? null : turn;
  }

  /** Simulated time of the run's last call, s. */
  timeOf(run: number): number {
    return this.times[run]!;
  }
}

/** Looks so many times before a call is held to be caught. */
const LOOKS = 5;

/**
 * Looks at the pulses from time to time, and calls `stuck` with the first run whose module has not come back from a call.
 * @param most time that a call may take, s
 * @returns what ends it
 */
export function watchPulses(
  pulses: ModulePulses,
  runs: number,
  most: number,
  stuck: (run: number, time: number) => void,
): () => void {
  const seen = Array.from({ length: runs }, () => ({ call: null as number | null, looks: 0 }));
  const look = () => {
    for (const [run, last] of seen.entries()) {
      const call = pulses.callOf(run);
      last.looks = call !== null && call === last.call ? last.looks + 1 : 0;
      last.call = call;
      if (last.looks < LOOKS) continue;
      clearInterval(timer);
      return stuck(run, pulses.timeOf(run));
    }
  };
  const timer = setInterval(look, (most * 1000) / LOOKS);
  return () => clearInterval(timer);
}
