import { longRun, type Moves, type State } from './chain.ts';

/** What a station of a series does: 0 starved, 1 to `phases` at work in that phase, one more blocked. */
const STARVED = 0;

/**
 * Parts per unit of time of stations in series, solved as a Markov chain: Erlang cycles of so many phases with these
 * means, `places` in each gap, the first never starved, the last never blocked, blocking after service.
 */
export function seriesRate(means: readonly number[], phases: number, places: number): number {
  const last = means.length - 1;
  const blocked = phases + 1;
  // A state is what each station does, and then the number in each gap.
  const gap = (station: number) => last + station;

  /** Station i is empty: it takes what there is, which may let the one before it go on. */
  const load = (state: number[], i: number): void => {
    if (i === 0) state[i] = 1;
    else if (state[gap(i)]! > 0 || state[i - 1] === blocked) {
      state[i] = 1;
      if (state[gap(i)]! > 0) state[gap(i)]!--;
      if (state[i - 1] !== blocked) return;
      if (places > 0) state[gap(i)]!++;
      load(state, i - 1);
    } else state[i] = STARVED;
  };
  const finish = (state: number[], i: number): void => {
    if (i < last && state[i + 1] !== STARVED) {
      if (state[gap(i + 1)] === places) {
        state[i] = blocked;
        return;
      }
      state[gap(i + 1)]!++;
    } else if (i < last) state[i + 1] = 1;
    load(state, i);
  };
  const rate = (i: number) => phases / means[i]!;
  const moves = (state: State): Moves =>
    means.flatMap((_, i) => {
      const phase = state[i]!;
      if (phase === STARVED || phase === blocked) return [];
      const next = [...state];
      if (phase < phases) next[i] = phase + 1;
      else finish(next, i);
      return [[next, rate(i)] as const];
    });
  const start = [...means.map((_, i) => (i === 0 ? 1 : STARVED)), ...Array<number>(last).fill(0)];
  return longRun(start, moves, (state) => (state[last] === phases ? rate(last) : 0));
}

/** Two machines with N between them, counting the part on the second and the finished one on the first. */
export interface Pair {
  /** Rates or chances of failing and of being repaired, of the first machine and the second. */
  readonly p: readonly [number, number];
  readonly r: readonly [number, number];
  readonly N: number;
}

export interface RateAndLevel {
  readonly rate: number;
  readonly level: number;
}

const solved = (moves: (state: State) => Moves, passes: (state: State) => number): RateAndLevel => ({
  rate: longRun([0, 1, 1], moves, passes),
  level: longRun([0, 1, 1], moves, ([n]) => n!),
});

/**
 * The pair with exponential cycles of rates `mu`, lives and repairs; a machine fails only while it works. A state is
 * the level and whether each machine is up.
 */
export function exponentialPair({ p, r, N }: Pair, mu: readonly [number, number]): RateAndLevel {
  const moves = ([n, first, second]: State): Moves => {
    const one = first === 1 && n! < N;
    const two = second === 1 && n! > 0;
    return [
      [[n! + 1, first!, second!], one ? mu[0] : 0],
      [[n! - 1, first!, second!], two ? mu[1] : 0],
      [[n!, 0, second!], one ? p[0] : 0],
      [[n!, first!, 0], two ? p[1] : 0],
      [[n!, 1, second!], first === 0 ? r[0] : 0],
      [[n!, first!, 1], second === 0 ? r[1] : 0],
    ];
  };
  return solved(
    (state) => moves(state).filter(([, rate]) => rate > 0),
    ([n, , second]) => (second === 1 && n! > 0 ? mu[1] : 0),
  );
}

/**
 * The pair with a common constant cycle, as the model steps: first each machine fails, if it has what it needs, or is
 * repaired; then those up that have what they need move the level.
 */
export function deterministicPair({ p, r, N }: Pair): RateAndLevel {
  /** Chances that a machine is down and up in the next cycle. */
  const next = (up: number, needs: boolean, i: 0 | 1) =>
    up === 1 ? (needs ? [p[i], 1 - p[i]] : [0, 1]) : [1 - r[i], r[i]];
  const moves = ([n, first, second]: State): Moves => {
    const [room, part] = [n! < N, n! > 0];
    return [0, 1].flatMap((one) =>
      [0, 1].map((two) => {
        const level = n! + (one === 1 && room ? 1 : 0) - (two === 1 && part ? 1 : 0);
        return [[level, one, two], next(first!, room, 0)[one]! * next(second!, part, 1)[two]!] as const;
      }),
    );
  };
  return solved(
    (state) => moves(state).filter(([, chance]) => chance > 0),
    // A cycle passes a part on when the second machine, with a part before it, is up after its step.
    ([n, , second]) => (n! > 0 ? next(second!, true, 1)[1]! : 0),
  );
}
