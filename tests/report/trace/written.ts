import type { Pieces } from '../../../src/report/output-folder.ts';

/** All that is written by pieces. */
export const written = (pieces: Pieces): Buffer =>
  Buffer.concat([...pieces].map((piece) => Buffer.from(piece as string)));
