import type { Install } from './install.ts';

/** Sends the parts of a station another way while it is in force. */
export const reroute: Install<'reroute'> = ({ at, to }, controls) => controls.rerouting(at, to);
