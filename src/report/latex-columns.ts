/** Text width of the standard article class at 10 pt, pt; the narrowest that a table is made for. */
const LINE = 345;
/** A digit of the standard face at 10 pt is 5 pt wide, and letters are little less on average. */
const SIGN = 5;
/** Share of the line that names are to have when they are broken, and what is left to them in the smallest setting. */
const NAMES = 0.25;
const LEAST = 0.18;

/** How a table is set so that it keeps within the line. */
interface Setting {
  /** What comes before the table, to make it smaller; empty where it need not be. */
  readonly before: string;
  /** The kind of its first column, whose cells are words. */
  readonly first: string;
  readonly broken: boolean;
}

/** From the largest to the smallest: a command, what it makes of a width, and the space to either side of a column, pt. */
const SIZES = [
  ['', 1, 6],
  ['\\small', 0.92, 6],
  ['\\small\\setlength{\\tabcolsep}{4pt}', 0.92, 4],
  ['\\footnotesize\\setlength{\\tabcolsep}{4pt}', 0.84, 4],
] as const;

/** Finds the largest setting in which the names fit, in one line if possible and else in several. */
export function settingOf(rows: readonly (readonly string[])[]): Setting {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)) * SIGN);
  const [names, ...others] = widths as [number, ...number[]];
  const rest = others.reduce((sum, width) => sum + width, 0);
  const room = (size: number, side: number) => LINE - size * rest - 2 * side * widths.length;
  const plain = ([, size, side]: (typeof SIZES)[number]) => size * names <= room(size, side);
  // Breaking names keeps the letters larger than shrinking all would.
  const wrapped = ([, size, side]: (typeof SIZES)[number]) => room(size, side) >= NAMES * LINE;
  const found = SIZES.find((one) => plain(one) || wrapped(one)) ?? SIZES.at(-1)!;
  const [before, size, side] = found;
  if (plain(found)) return { before, first: 'l', broken: false };
  const share = Math.max(LEAST, room(size, side) / LINE);
  return { before, first: `p{${share.toFixed(2)}\\linewidth}`, broken: true };
}
