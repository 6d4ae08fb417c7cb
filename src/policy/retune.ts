import type { Install } from './install.ts';

/**
 * Run-to-run control of a setting by a feature's readings. The offset is what the part would have had without the
 * adjustment in force when it was formed, through the gain that the controller believes in; its mark tells which that
 * was, so that neither the delay between forming and gauging nor an adjustment that was cut short winds the controller
 * up. A part whose mark cannot be read tells nothing. Readings are followed while it is in force; what it has adjusted
 * stays when that ends.
 *
 * `ewma` cancels a running estimate of the offset: A. Ingolfsson and E. Sachs (1993), Stability and sensitivity of an
 * EWMA controller, Journal of Quality Technology 25, 271-287. `deadbeat` cancels the whole of the newest offset: K. J.
 * Astrom and B. Wittenmark, Computer-Controlled Systems. `step` moves by a fixed step against it, as operators do.
 */
export const retune: Install<'retune'> = (spec, controls) => {
  // Only the rule ewma has a weight; the others go by the newest offset alone.
  const { setting, by, rule, deadband, meanOf, weight = 1 } = spec;
  const gain = spec.gain?.value ?? controls.gain(by, setting);
  const step = spec.step?.value ?? 0;
  let offset = 0;
  let adjusted = 0;
  let sum = 0;
  let summed = 0;
  let follows = false;
  controls.onReading(by, setting, ({ value, aim, adjustedThen }) => {
    if (!follows || adjustedThen === null) return;
    sum += value - aim - gain * adjustedThen;
    if (++summed < meanOf) return;
    offset = weight * (sum / meanOf) + (1 - weight) * offset;
    sum = 0;
    summed = 0;
    const left = offset + gain * adjusted;
    if (Math.abs(left) <= deadband) return;
    adjusted = rule === 'step' ? adjusted - Math.sign(left * gain) * step : -offset / gain;
    controls.adjust(setting, adjusted);
  });
  return (holds) => {
    follows = holds;
    sum = 0;
    summed = 0;
  };
};
