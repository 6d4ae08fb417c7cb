import type { Line } from './line.ts';

/** What puts so many pieces of the reserve of a stock on hand, as far as there are. */
export function setReserve({ stocks, done }: Line, name: string): (pieces: number) => void {
  const stock = stocks.get(name)!;
  done.set(`drawn_${name}_pieces`, () => stock.tally.drawn);
  return (pieces) => stock.draw(pieces);
}
