import type { Install } from './install.ts';

/**
 * Holds a station when too many of the last sights went wrong, and after a while releases it, freed of what
 * disturbed its settings or marks. The window starts empty after each fix.
 */
export const stopAndFix: Install<'stop-and-fix'> = ({ station, watch, takes, coolDown }, controls) => {
  const duration = controls.sampler(takes, `stop-and-fix/${station}/${watch.at}/${watch.sees}`);
  let recent: boolean[] = [];
  let wrongs = 0;
  let deafUntil = 0;
  controls.onSight(watch.at, watch.sees, (wrong) => {
    if (controls.now < deafUntil) return;
    recent.push(wrong);
    if (wrong) wrongs++;
    if (recent.length > watch.ofLast && recent.shift()) wrongs--;
    if (wrongs < watch.count) return;
    recent = [];
    wrongs = 0;
    const time = duration();
    deafUntil = controls.now + time + coolDown;
    controls.hold(station);
    controls.after(time, () => {
      controls.fix(station);
      controls.release(station);
    });
  });
};
