/**
 * Codewords of the square Data Matrix symbols (ECC 200) of one block, by their modules: those that carry data, and
 * those that correct. Source: ISO/IEC 16022, from memory.
 */
const SYMBOLS = {
  '10x10': [3, 5],
  '12x12': [5, 7],
  '14x14': [8, 10],
  '16x16': [12, 12],
  '18x18': [18, 14],
  '20x20': [22, 18],
  '22x22': [30, 20],
  '24x24': [36, 24],
  '26x26': [44, 28],
} as const satisfies Record<string, readonly [data: number, check: number]>;

export type SymbolSize = keyof typeof SYMBOLS;
export const SYMBOL_SIZES = Object.keys(SYMBOLS) as [SymbolSize, ...SymbolSize[]];

interface Codewords {
  readonly data: number;
  readonly check: number;
  /** How many wrong ones, at unknown places, are corrected: half as many as check (the Reed-Solomon bound). */
  readonly corrected: number;
}

export function codewordsOf(size: SymbolSize): Codewords {
  const [data, check] = SYMBOLS[size];
  return { data, check, corrected: Math.floor(check / 2) };
}

/** By number, the chance that so many of the symbol's codewords are wrong, each with chance `wrong`: the binomial law. */
export function wrongCodewords(size: SymbolSize, wrong: number): number[] {
  const { data, check } = codewordsOf(size);
  const chances = [1];
  for (let n = 1; n <= data + check; n++) {
    chances.push(0);
    for (let k = n; k >= 0; k--) {
      chances[k] = chances[k]! * (1 - wrong) + (k > 0 ? chances[k - 1]! * wrong : 0);
    }
  }
  return chances;
}

/** The chance that a symbol is not read: more of its codewords are wrong than can be corrected. */
export function unreadableChance(size: SymbolSize, wrong: number): number {
  return wrongCodewords(size, wrong)
    .slice(codewordsOf(size).corrected + 1)
    .reduce((sum, chance) => sum + chance, 0);
}
