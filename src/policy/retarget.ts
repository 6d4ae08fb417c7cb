import type { Install } from './install.ts';

/** Moves the target of a setting while it is in force, so that what is formed then is another variant. */
export const retarget: Install<'retarget'> = ({ setting, by }, controls) =>
  controls.retargeting(setting, by.value);
