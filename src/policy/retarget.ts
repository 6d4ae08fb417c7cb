import { meet } from './condition.ts';
import type { Install } from './install.ts';

/** Moves the target of a setting while the condition holds, so that what is formed then is another variant. */
export const retarget: Install<'retarget'> = ({ setting, by, when }, controls) =>
  meet(when, controls, controls.retargeting(setting, by.value));
