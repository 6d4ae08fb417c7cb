/** Where there would be more cases together than this, so many stand for all. */
const MOST = 16_384;
const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37];

/** One case of each of several things, and how often they come together. */
interface Together<Of> {
  readonly share: number;
  readonly cases: readonly Of[];
}

type OneOf<Of> = readonly (Of & { readonly share: number })[];

function* everyOne<Of>([first, ...others]: readonly OneOf<Of>[]): Generator<Together<Of>> {
  if (!first) {
    yield { share: 1, cases: [] };
    return;
  }
  for (const one of first)
    for (const { share, cases } of everyOne(others))
      yield { share: one.share * share, cases: [one, ...cases] };
}

/** The case at which the running sum of the shares passes `point`, from 0 to 1. */
function caseAt<Of>(point: number, sums: readonly number[], cases: OneOf<Of>): Of {
  let [low, high] = [0, cases.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sums[middle]! > point) high = middle;
    else low = middle + 1;
  }
  return cases[low]!;
}

const running = (cases: OneOf<unknown>): number[] => {
  let sum = 0;
  return cases.map(({ share }) => {
    sum += share;
    return sum;
  });
};

/**
 * Every combination of one case of each, independent of each other, shares adding up to 1; of too many, some that lie
 * evenly among all: the additive sequence of the square roots of primes.
 */
export function casesTogether<Of>(given: readonly OneOf<Of>[]): Together<Of>[] {
  const number = given.reduce((product, cases) => product * cases.length, 1);
  if (number <= MOST || given.length > PRIMES.length) return [...everyOne(given)];
  const sums = given.map(running);
  const roots = PRIMES.map(Math.sqrt);
  return Array.from({ length: MOST }, (_, k) => ({
    share: 1 / MOST,
    cases: given.map((cases, i) => caseAt(((k + 0.5) * roots[i]!) % 1, sums[i]!, cases)),
  }));
}
