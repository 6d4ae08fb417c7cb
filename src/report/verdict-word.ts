import type { ChalkInstance } from 'chalk';

/** The longest word in two lines, so that a table of 80 columns has room for it. */
export const stacked = (word: string): string => word.replace('no difference worth', 'no difference\nworth');

/** Colour only repeats what the word says. */
export function painted(ink: ChalkInstance): (cell: string) => string {
  return (cell) => {
    const word = cell.trim();
    if (word === 'better') return ink.green(cell);
    if (word === 'worse') return ink.red(cell);
    return cell;
  };
}
