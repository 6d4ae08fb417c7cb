/** Whether text on stdout may be coloured: a terminal, and NO_COLOR (no-color.org) not set. */
export const coloured = (): boolean => process.stdout.isTTY === true && !process.env.NO_COLOR;

/** Columns to write in: the terminal's, within what reads well, and 80 where there is none. */
export const columns = (): number => Math.min(100, Math.max(60, process.stdout.columns || 80));
