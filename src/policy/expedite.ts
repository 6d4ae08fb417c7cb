import { meet } from './condition.ts';
import type { Install } from './install.ts';

/** Asks for the oldest order of a stock to come sooner when the condition begins, and for each placed while it holds. */
export const expedite: Install<'expedite'> = ({ stock, when }, controls) => {
  let hurries = false;
  controls.onOrder(stock, () => {
    if (hurries) controls.expedite(stock);
  });
  meet(when, controls, (holds) => {
    hurries = holds;
    if (holds) controls.expedite(stock);
  });
};
