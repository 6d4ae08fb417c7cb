import { normalDensity, normalPoint, normalShare } from './normal.ts';
import { poissonExcess, poissonUpTo } from './poisson.ts';

// Stock theory in closed form. Demand over a lead time is in pieces. Sources as in the textbooks that the tests name:
// S. Nahmias, Production and Operations Analysis, chapter 5; W. J. Hopp and M. L. Spearman, Factory Physics, chapter 2.

/** Rounds in which an iteration settles or never will. */
const MOST_ROUNDS = 1000;
const SETTLED = 1e-12;

/** What a standard normal number exceeds `z` by, in the mean. */
export function unitNormalLoss(z: number): number {
  return Math.max(0, normalDensity(z) - z * normalShare(-z));
}

/** Demand that is normal with this mean and standard deviation (above 0), pieces. */
export interface NormalDemand {
  readonly mean: number;
  readonly sd: number;
}

/** Pieces short in the mean when `level` meets normal demand. */
export function normalExcess(level: number, { mean, sd }: NormalDemand): number {
  return sd * unitNormalLoss((level - mean) / sd);
}

/** What to have for one period of normal demand, when a piece short costs `short` and a piece left over `left`. */
export function newsvendor(demand: NormalDemand, { short, left }: { short: number; left: number }) {
  const ratio = short / (short + left);
  const z = normalPoint(ratio);
  const quantity = demand.mean + z * demand.sd;
  const expectedShort = normalExcess(quantity, demand);
  return { ratio, z, quantity, expectedShort, expectedLeft: quantity - demand.mean + expectedShort };
}

/** Share of Poisson demand met at once from a base stock of `level`; what is short is waited for. `mean` is over a lead time. */
export function baseStockFill(level: number, mean: number): number {
  return poissonUpTo(level - 1, mean);
}

/** The smallest base stock whose chance to cover Poisson demand over a lead time is at least `ratio` (below 1). */
export function baseStockFor(ratio: number, mean: number): number {
  let level = 0;
  while (poissonUpTo(level, mean) < ratio) level++;
  return level;
}

/**
 * Share of Poisson demand lost when `servers` pieces are ordered one by one and what is short is not waited for.
 * `load` is the demand over a mean lead time; the law of the lead time does not matter. A. K. Erlang (1917), by the usual recursion.
 */
export function erlangLoss(load: number, servers: number): number {
  let loss = 1;
  for (let n = 1; n <= servers; n++) loss = (load * loss) / (n + load * loss);
  return loss;
}

/**
 * Share of Poisson demand that waits when `servers` pieces are ordered one by one as they are taken, and what is short is
 * waited for but not ordered: each piece is a server, busy for its lead time, which is exponential. 1 where the `load`
 * is more than they can serve. A. K. Erlang (1917), by way of the loss.
 */
export function erlangDelay(load: number, servers: number): number {
  if (load >= servers) return 1;
  const loss = erlangLoss(load, servers);
  return loss / (1 - (load / servers) * (1 - loss));
}

/** Share of Poisson demand met at once under orders of `order` at `reorderAt`; what is short is waited for. */
export function poissonLotFill(reorderAt: number, order: number, mean: number): number {
  return 1 - (poissonExcess(reorderAt, mean) - poissonExcess(reorderAt + order, mean)) / order;
}

/** The same where demand over a lead time is normal. */
export function normalLotFill(reorderAt: number, order: number, demand: NormalDemand): number {
  return 1 - (normalExcess(reorderAt, demand) - normalExcess(reorderAt + order, demand)) / order;
}

/** The reorder point at which a share `covered` of the replenishment cycles sees no shortage. */
export function reorderPointByCycles(covered: number, { mean, sd }: NormalDemand): number {
  return mean + sd * normalPoint(covered);
}

/** The reorder point at which a share `filled` of the pieces is met at once, with orders of `order` pieces. */
export function reorderPointByPieces(filled: number, order: number, { mean, sd }: NormalDemand): number {
  const wanted = ((1 - filled) * order) / sd;
  // The loss falls in z: halve the interval.
  let [low, high] = [-wanted - 10, 10];
  for (let round = 0; round < MOST_ROUNDS && high - low > SETTLED; round++) {
    const middle = (low + high) / 2;
    if (unitNormalLoss(middle) > wanted) low = middle;
    else high = middle;
  }
  return mean + sd * high;
}

interface LotCosts {
  /** Pieces a year. */
  readonly demand: number;
  /** An order, a piece and year on hand, a piece short. */
  readonly order: number;
  readonly holding: number;
  readonly short: number;
}

/**
 * Order quantity and reorder point of least cost when each piece short costs something, by turns until they settle.
 * @throws RangeError where a piece short costs so little that no reorder point is worth it
 */
export function lotAndReorderPoint({ demand, order, holding, short }: LotCosts, during: NormalDemand) {
  const economic = Math.sqrt((2 * demand * order) / holding);
  let quantity = economic;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const covered = 1 - (quantity * holding) / (short * demand);
    if (!(covered > 0)) break;
    const reorderAt = reorderPointByCycles(covered, during);
    const expectedShort = normalExcess(reorderAt, during);
    const next = Math.sqrt((2 * demand * (order + short * expectedShort)) / holding);
    const done = Math.abs(next - quantity) < SETTLED * quantity;
    quantity = next;
    if (done) return { economic, quantity, reorderAt, expectedShort };
  }
  throw new RangeError('order quantity and reorder point did not settle: a piece short costs too little');
}
