import type { Install } from './install.ts';

/**
 * Run-to-run control of a setting by a feature's readings: an EWMA of the offset that the part would have had
 * without the adjustments in force when it was formed, cancelled through the designed gain. Because the part's
 * mark tells which adjustment it was formed with, the delay between forming and gauging does no harm; a part
 * whose mark cannot be read tells nothing.
 * Source: A. Ingolfsson and E. Sachs (1993), Stability and sensitivity of an EWMA controller, Journal of Quality
 * Technology 25, 271-287.
 */
export const retune: Install<'retune'> = ({ setting, by, weight, deadband }, controls) => {
  const gain = controls.gain(by, setting);
  let offset = 0;
  let adjusted = 0;
  controls.onReading(by, setting, ({ value, aim, adjustedThen }) => {
    if (adjustedThen === null) return;
    offset = weight * (value - aim - gain * adjustedThen) + (1 - weight) * offset;
    if (Math.abs(offset + gain * adjusted) <= deadband) return;
    adjusted = -offset / gain;
    controls.adjust(setting, adjusted);
  });
};
