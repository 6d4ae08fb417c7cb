import type { Install } from './install.ts';

/** Lets each machine of a trimming station renew its tool, after its cycle, when it comes into force. */
export const changeTool: Install<'change-tool'> = ({ station, by }, controls) => {
  const change = controls.toolChange(station, by);
  return (holds) => {
    if (holds) change();
  };
};
