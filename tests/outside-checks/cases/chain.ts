/** A state of a Markov chain, as whole numbers. */
export type State = readonly number[];
/** Where a state goes on to and how often: rates in continuous time, chances of a step in discrete time. */
export type Moves = readonly (readonly [State, number])[];

const CLOSE = 1e-14;
const MOST_SWEEPS = 200_000;

/**
 * The long-run mean of `of` over the states of a Markov chain that can be reached from `start`: balance equations by
 * the method of Gauss and Seidel.
 */
export function longRun(start: State, moves: (state: State) => Moves, of: (state: State) => number): number {
  const states = [start];
  const numberOf = new Map([[String(start), 0]]);
  const into: [from: number, rate: number][][] = [[]];
  const out: number[] = [];
  for (let from = 0; from < states.length; from++) {
    out[from] = 0;
    for (const [state, rate] of moves(states[from]!)) {
      const key = String(state);
      if (!numberOf.has(key)) {
        numberOf.set(key, states.push(state) - 1);
        into.push([]);
      }
      const to = numberOf.get(key)!;
      if (to === from || rate === 0) continue;
      into[to]!.push([from, rate]);
      out[from]! += rate;
    }
  }
  const chance = states.map(() => 1 / states.length);
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let moved = 0;
    let total = 0;
    for (let to = 0; to < states.length; to++) {
      let flow = 0;
      for (const [from, rate] of into[to]!) flow += chance[from]! * rate;
      const now = flow / out[to]!;
      moved += Math.abs(now - chance[to]!);
      chance[to] = now;
      total += now;
    }
    for (let i = 0; i < chance.length; i++) chance[i]! /= total;
    if (moved < CLOSE) return states.reduce((sum, state, i) => sum + chance[i]! * of(state), 0);
  }
  throw new Error('the chain was not solved');
}
