import type { Install } from './install.ts';
import { nameOf, watch } from './watches/watch.ts';

/**
 * Holds a station when what it watches calls for it, and after a while releases it, freed of what disturbed it where that
 * can be put right there (`Controls.fix`). The watch starts anew after each fix.
 */
export const stopAndFix: Install<'stop-and-fix'> = ({ station, watch: spec, takes, coolDown }, controls) => {
  const duration = controls.sampler(takes, `stop-and-fix/${station}/${nameOf(spec)}`);
  let deafUntil = 0;
  watch(spec, controls, {
    deaf: () => controls.now < deafUntil,
    act: () => {
      const time = duration();
      deafUntil = controls.now + time + coolDown;
      controls.hold(station);
      controls.after(time, () => {
        controls.fix(station);
        controls.release(station);
      });
    },
  });
  return null;
};
