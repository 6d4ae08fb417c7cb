import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate';
import type { Playback } from './playback.ts';

/**
 * A playback as it stands in a page: DEFLATE (RFC 1951) in Base64. By a library in the language itself, since what the
 * system's own would write depends on the machine.
 */
export const packed = (playback: Playback): string =>
  btoa(strFromU8(deflateSync(strToU8(JSON.stringify(playback)), { level: 9 }), true));

export const unpacked = (text: string): Playback =>
  JSON.parse(strFromU8(inflateSync(strToU8(atob(text), true))));
