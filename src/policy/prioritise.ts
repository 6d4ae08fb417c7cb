import type { Install } from './install.ts';

/** Lets a crew serve these stations first while it is in force. */
export const prioritise: Install<'prioritise'> = ({ crew, first }, controls) =>
  controls.prioritising(crew, first);
