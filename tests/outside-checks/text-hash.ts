/** FNV-1a, a common hash of text, as a whole number below a million: a case keeps its seeds when others come or go. */
export function textHash(text: string): number {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193);
  return (hash >>> 0) % 1_000_000;
}
