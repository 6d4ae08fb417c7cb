import type { Install } from './install.ts';

/** Gauges one part in `every` while it is in force, and sends what is off limits where the response says. */
export const inspect: Install<'inspect'> = ({ at, every, offLimits }, controls) => {
  const gauge = controls.gaugingEvery(at, every);
  const send = offLimits === undefined ? null : controls.sendingRejects(at, offLimits);
  return (holds) => {
    gauge(holds);
    send?.(holds);
  };
};
