import { COUNTS, type Count } from '../line/counts.ts';

const snake = (key: string) => key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

/** Each count with its key in data files, in their order. */
export const COUNT_KEYS: readonly (readonly [Count, string])[] = COUNTS.map((key) => [key, snake(key)]);
