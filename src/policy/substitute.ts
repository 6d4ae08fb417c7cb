import { meet } from './condition.ts';
import type { Install } from './install.ts';

/** Lets what would take a stock take what stands in for it while the condition holds. */
export const substitute: Install<'substitute'> = ({ for: stock, by, when }, controls) =>
  meet(when, controls, controls.substituting(stock, by));
