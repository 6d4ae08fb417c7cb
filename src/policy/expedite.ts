import type { Install } from './install.ts';

/** Asks for the oldest order of a stock to come sooner when it comes into force, and for each placed while it is. */
export const expedite: Install<'expedite'> = ({ stock }, controls) => {
  let hurries = false;
  controls.onOrder(stock, (order) => {
    if (hurries) controls.expedite(stock, order);
  });
  return (holds) => {
    hurries = holds;
    if (holds) controls.expedite(stock);
  };
};
