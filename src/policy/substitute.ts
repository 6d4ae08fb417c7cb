import type { Install } from './install.ts';

/** Lets what would take a stock take what stands in for it while it is in force. */
export const substitute: Install<'substitute'> = ({ for: stock, by }, controls) =>
  controls.substituting(stock, by);
