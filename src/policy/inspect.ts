import type { Install } from './install.ts';

/** Gauges one part in `every` from the start on, and sends what is off limits where the response says. */
export const inspect: Install<'inspect'> = (spec, controls) => {
  controls.gaugeEvery(spec.at, spec.every);
  if (spec.offLimits !== undefined) controls.sendRejects(spec.at, spec.offLimits);
};
