import type { Install } from './install.ts';

/** Sends the rejects of a station another way while it is in force. */
export const reject: Install<'reject'> = ({ at, to }, controls) => controls.sendingRejects(at, to);
