import type { Finding } from './problem.ts';

/** A finding of what stands in no text, with its place in the structure. */
export function inWords({ path, key, message }: Finding): string {
  const place = (key === undefined ? path : [...path, key]).map(String).join('.');
  return place === '' ? message : `${place}: ${message}`;
}
