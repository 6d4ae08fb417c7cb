// A part shrinks from its mould: part = mould (1 - s), with s the share that the material shrinks by, below 1.
// Source: geometry; the allowance that mould makers use.

/** The size of the part from the size in the mould, mm. */
export const partFrom = (mould: number, shrinkage: number): number => mould * (1 - shrinkage);

/** The size in the mould that gives a part of this size, mm. */
export const mouldFor = (part: number, shrinkage: number): number => part / (1 - shrinkage);
