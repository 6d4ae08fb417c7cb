// What is warmer is longer: dL = L x alpha x dT, with alpha the coefficient of linear expansion. Sizes are stated at the
// reference temperature of ISO 1, 20 °C. Source of the formula: physics; the tolerance page of mayfieldplastics.com uses it
// for formed plastic parts.

/** ISO 1, °C. */
export const REFERENCE_TEMPERATURE = 20;

/**
 * By how much a length grows, in its own unit; it shrinks where this is negative.
 * @param expansion per degree, of whatever scale `warmer` is in
 */
export const thermalMovement = (length: number, expansion: number, warmer: number): number =>
  length * expansion * warmer;
