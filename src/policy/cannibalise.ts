import type { Install } from './install.ts';

/** While a repair waits for a spare, takes it out of another machine, which then waits in its place. */
export const cannibalise: Install<'cannibalise'> = ({ spare, from }, controls) => {
  controls.cannibalise(spare, from);
  return null;
};
