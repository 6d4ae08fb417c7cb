/**
 * How a heating or cooling time grows with the thickness of the sheet: `factor` (s/mm or s/mm²) times the thickness to
 * the power of 1 or 2. A thin sheet, below about 1.5 mm, is as warm inside as outside, and its time grows with its
 * thickness; in a thick one, above about 3 mm, conduction sets the pace, and its time grows with the square.
 * Source: J. L. Throne (1996), Technology of Thermoforming, chapter 3, and his papers on the heating of sheet.
 */
export interface SheetTime {
  readonly factor: number;
  readonly power: 1 | 2;
}

/** The law under which a sheet of `sheet` mm (above zero) takes `takes` s. */
export const sheetTime = (takes: number, sheet: number, power: 1 | 2): SheetTime => ({
  factor: takes / sheet ** power,
  power,
});

/** Seconds for a sheet of this thickness, mm. */
export const timeFor = ({ factor, power }: SheetTime, thickness: number): number =>
  power === 1 ? factor * thickness : factor * thickness * thickness;
