/** A control chart that is told one point after the other. */
export interface Chart {
  /** The next point, as so many sigmas from the centre; says whether the chart signals. */
  next(value: number): boolean;
  /** Forgets the points so far. */
  restart(): void;
}
