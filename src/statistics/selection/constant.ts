/** A point of a law and what it stands for. */
interface Point {
  readonly x: number;
  readonly weight: number;
}

/** Weights below this share of the largest are left out. */
const NOTHING = 1e-18;
const HALVINGS = 60;

/**
 * Points evenly `step` apart on some scale that stand for a law, from its density there up to a factor: the trapezoidal rule,
 * exact to rounding for smooth densities that die out at both ends (L. N. Trefethen and J. A. C. Weideman (2014), SIAM Review 56, 385-458).
 * @param logDensity of one peak near `middle`
 * @param place from the scale to the value
 */
export function pointsOf(
  logDensity: (t: number) => number,
  middle: number,
  step: number,
  place: (t: number) => number,
): Point[] {
  const found: Point[] = [];
  const top = logDensity(middle);
  for (const direction of [1, -1]) {
    for (let i = direction > 0 ? 0 : 1; ; i++) {
      const t = middle + direction * i * step;
      const weight = Math.exp(logDensity(t) - top);
      if (weight < NOTHING) break;
      found.push({ x: place(t), weight });
    }
  }
  const sum = found.reduce((total, { weight }) => total + weight, 0);
  return found.map(({ x, weight }) => ({ x, weight: weight / sum }));
}

/** Where a growing function reaches `target`, which it does somewhere above 0; by halving. */
export function reached(grows: (h: number) => number, target: number): number {
  let [low, high] = [0, 1];
  while (grows(high) < target) [low, high] = [high, 2 * high];
  for (let i = 0; i < HALVINGS && high - low > 1e-12 * high; i++) {
    const middle = (low + high) / 2;
    if (grows(middle) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** @throws RangeError unless a selection with these is possible */
export function checkSelection(systems: number, firstStage: number, confidence: number): void {
  if (!Number.isInteger(systems) || systems < 2)
    throw new RangeError(`${systems} systems; a choice needs 2 or more`);
  if (!Number.isInteger(firstStage) || firstStage < 2)
    throw new RangeError(`a first stage of ${firstStage} runs; their spread needs 2 or more`);
  if (!(confidence > 1 / systems && confidence < 1))
    throw new RangeError(
      `a probability of ${confidence}; among ${systems} systems it lies above ${1 / systems}, which a blind guess has, and below 1`,
    );
}
