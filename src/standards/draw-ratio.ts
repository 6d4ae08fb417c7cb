// The areal draw ratio is the area of the formed part, rim left out, over the area of sheet that it was drawn from.
// Sources: geometry; J. L. Throne (1996), Technology of Thermoforming; the draw-ratio page of a heavy-gauge
// thermoformer's design guide (thermoform.com) for the open box.

/** Of an open box, mm; all three sizes above zero. */
export function boxDrawRatio(length: number, width: number, depth: number): number {
  const footprint = length * width;
  return (footprint + 2 * depth * (length + width)) / footprint;
}

/** Of a straight cup with a flat bottom, mm; `diameter` above zero. */
export const cupDrawRatio = (diameter: number, height: number): number => 1 + (4 * height) / diameter;

/** Of half a sphere. */
export const HEMISPHERE_DRAW_RATIO = 2;

/** The mean wall of a part drawn from a sheet of this thickness, mm: the volume stays. */
export const meanWall = (sheet: number, drawRatio: number): number => sheet / drawRatio;
