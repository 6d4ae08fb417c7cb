import type { Install } from './install.ts';

/** Puts pieces of the reserve of a stock on hand whenever it comes into force. */
export const drawOnReserve: Install<'draw-on-reserve'> = (
  { stock, pieces = Number.POSITIVE_INFINITY },
  controls,
) => {
  const draw = controls.reserve(stock);
  return (holds) => {
    if (holds) draw(pieces);
  };
};
