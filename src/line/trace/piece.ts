/** A piece of bought-in material. */
export interface Piece {
  readonly stock: string;
  /** The delivery it came with: 0 is what was there at the start, k what order number k brought. */
  readonly lot: number;
  /** Its place among the pieces taken from this stock, from 1 on. */
  readonly piece: number;
}
