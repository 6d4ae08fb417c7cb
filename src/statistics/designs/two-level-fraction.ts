/** Letters of factors in their order; I is the identity, so it names none. */
const LETTERS = 'ABCDEFGHJKLMNOPQRSTUVWXYZ';

/** A factor set by the product of others, such as `D=ABC` or, the other half, `D=-ABC`. */
export type Generator = string;

/** -1 for the low level, 1 for the high one. */
export type Sign = -1 | 1;

export interface Fraction {
  /** By point and factor; the first factor changes fastest. */
  readonly points: readonly (readonly Sign[])[];
  /** Products of factors that are the same at all points, such as `ABCD` or `-ABD`; none in a full factorial. */
  readonly words: readonly string[];
  /** The fewest factors in such a word: 3 where main effects hide behind interactions of two, 4 where those do behind each other; null in a full factorial. */
  readonly resolution: number | null;
}

/** A set of factors as bits, and the sign of their product. */
interface Product {
  readonly factors: number;
  readonly sign: Sign;
}

const productOf = (one: Product, other: Product): Product => ({
  factors: one.factors ^ other.factors,
  sign: one.sign === other.sign ? 1 : -1,
});

function bits(factors: number): number[] {
  return [...LETTERS].map((_, i) => i).filter((i) => (factors >> i) & 1);
}

const nameOf = ({ factors, sign }: Product): string =>
  (sign < 0 ? '-' : '') +
  bits(factors)
    .map((i) => LETTERS[i])
    .join('');

/** The word that a generator makes the same at all points, and the factor it sets. */
function read(generator: Generator, basic: number, factors: number): Product & { readonly sets: number } {
  const [, own, minus, product] = /^\s*([A-Z])\s*=\s*(-?)\s*([A-Z]+)\s*$/.exec(generator) ?? [];
  const sets = own ? LETTERS.indexOf(own) : -1;
  const from = [...(product ?? '')].map((letter) => LETTERS.indexOf(letter));
  const known = from.every((i) => i >= 0 && i < basic) && new Set(from).size === from.length;
  if (sets < basic || sets >= factors || !known)
    throw new RangeError(
      `generator ${generator}: expected one of ${[...LETTERS].slice(basic, factors).join(', ')} = a product of ${[...LETTERS].slice(0, basic).join(', ')}`,
    );
  return {
    sets,
    factors: from.reduce((all, i) => all | (1 << i), 1 << sets),
    sign: minus ? -1 : 1,
  };
}

/**
 * A fraction of all combinations of factors at two levels: 2^(k - p) points by p generators, each of which sets one of the last
 * p factors. G. E. P. Box, J. S. Hunter and W. G. Hunter, Statistics for Experimenters; NIST/SEMATECH e-Handbook 5.3.3.4.
 * @param factors k, up to 25; those not set by a generator go through all their combinations, up to 2^16
 * @throws RangeError for generators that do not fit
 */
export function twoLevelFraction(factors: number, generators: readonly Generator[] = []): Fraction {
  const basic = factors - generators.length;
  if (!Number.isInteger(factors) || factors < 1 || factors > LETTERS.length || basic < 1 || basic > 16)
    throw new RangeError(
      `${factors} factors with ${generators.length} generators; at most 25, 1 to 16 of them free`,
    );
  const defined = generators.map((generator) => read(generator, basic, factors));
  const twice = defined.find(({ sets }, i) => defined.findIndex((other) => other.sets === sets) !== i);
  if (twice) throw new RangeError(`factor ${LETTERS[twice.sets]} is set by two generators`);
  let relation: Product[] = [{ factors: 0, sign: 1 }];
  for (const word of defined) relation = [...relation, ...relation.map((known) => productOf(known, word))];
  const words = relation.slice(1).sort((a, b) => bits(a.factors).length - bits(b.factors).length);
  const points = Array.from({ length: 2 ** basic }, (_, point) => {
    const row = Array.from({ length: factors }, (_, i): Sign => ((point >> i) & 1 ? 1 : -1));
    for (const { sets, factors: word, sign } of defined)
      row[sets] = bits(word)
        .filter((i) => i !== sets)
        .reduce<Sign>((product, i) => (product === row[i] ? 1 : -1), sign);
    return row;
  });
  return {
    points,
    words: words.map(nameOf),
    resolution: words.length > 0 ? bits(words[0]!.factors).length : null,
  };
}

/** Generators by the number of factors, and of points as a power of 2; NIST/SEMATECH e-Handbook 5.3.3.4.7 (from memory, resolutions checked). */
const USUAL: Readonly<Record<number, Readonly<Record<number, string>>>> = {
  3: { 2: 'C=AB' },
  4: { 3: 'D=ABC' },
  5: { 4: 'E=ABCD', 3: 'D=AB E=AC' },
  6: { 5: 'F=ABCDE', 4: 'E=ABC F=BCD', 3: 'D=AB E=AC F=BC' },
  7: { 6: 'G=ABCDEF', 5: 'F=ABCD G=ABDE', 4: 'E=ABC F=BCD G=ACD', 3: 'D=AB E=AC F=BC G=ABC' },
  8: { 6: 'G=ABCD H=ABEF', 5: 'F=ABC G=ABD H=BCDE', 4: 'E=BCD F=ACD G=ABC H=ABD' },
};

/** The usual fractions of so many factors, the smallest first; known for 3 to 8. */
export function usualFractions(
  factors: number,
): { readonly points: number; readonly generators: readonly Generator[] }[] {
  return Object.entries(USUAL[factors] ?? {})
    .map(([power, text]) => ({ points: 2 ** Number(power), generators: text.split(' ') }))
    .sort((a, b) => a.points - b.points);
}

/**
 * The usual generators of the smallest fraction of at least this resolution, for 3 to 8 factors; none where only the full
 * factorial has it.
 */
export function usualGenerators(factors: number, resolution: number): readonly Generator[] {
  const found = usualFractions(factors).find(
    ({ generators }) => twoLevelFraction(factors, generators).resolution! >= resolution,
  );
  return found?.generators ?? [];
}
