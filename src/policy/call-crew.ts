import type { Install } from './install.ts';

/** Calls more of a crew when it comes into force; they come after a while, if it still is, and stay while it is. */
export const callCrew: Install<'call-crew'> = ({ crew, by, comesAfter }, controls) => {
  const there = controls.reinforcing(crew, by);
  const delay = comesAfter && controls.sampler(comesAfter, `call-crew/${crew}`);
  let calls = 0;
  return (holds) => {
    const call = ++calls;
    const wait = holds && delay ? delay() : 0;
    if (wait === 0) return there(holds);
    controls.after(wait, () => {
      if (call === calls) there(true);
    });
  };
};
