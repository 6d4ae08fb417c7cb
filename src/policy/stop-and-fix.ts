import type { Install } from './install.ts';
import { nameOf, watch } from './watches/watch.ts';

/**
 * Holds a station when what it watches calls for it, and after a while releases it, freed of what disturbed it where that
 * can be put right there (`Controls.fix`). The watch starts anew after each fix. It is in force while it holds the station.
 */
export const stopAndFix: Install<'stop-and-fix'> = (
  { station, watch: spec, takes, coolDown },
  controls,
  show,
) => {
  const duration = controls.sampler(takes, `stop-and-fix/${station}/${nameOf(spec)}`);
  let deafUntil = 0;
  watch(spec, controls, {
    deaf: () => controls.now < deafUntil,
    act: () => {
      const time = duration();
      deafUntil = controls.now + time + coolDown;
      controls.hold(station);
      show(true);
      controls.after(time, () => {
        controls.fix(station);
        controls.release(station);
        show(false);
      });
    },
  });
  return null;
};
