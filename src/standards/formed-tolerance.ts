// What thermoforming shops commonly hold a formed dimension to without trimming it, from a machined aluminium mould.
// Common practice of the trade, no standard: plus or minus 0.020 in over the first 12 in; of each further inch one shop
// asks for 0.001 in more (the tolerance page of thermoform.com), another for 0.002 in (that of mayfieldplastics.com).

/** The first 12 in and the 0.020 in that are asked for over them, mm. */
const FIRST = 304.8;
const OVER_FIRST = 0.508;
/** What each further unit of length asks for. */
const FURTHER = { closest: 0.001, widest: 0.002 };

/** Plus or minus so much, mm: what the more and the less exacting practice ask for. */
interface FormedTolerance {
  readonly closest: number;
  readonly widest: number;
}

/** What a formed dimension of `length` mm is commonly held to. */
export function formedTolerance(length: number): FormedTolerance {
  const further = Math.max(0, length - FIRST);
  return {
    closest: OVER_FIRST + FURTHER.closest * further,
    widest: OVER_FIRST + FURTHER.widest * further,
  };
}
