import { closest, distance } from 'fastest-levenshtein';

/** The known word most like `word`, or undefined when none is near. */
function nearest(word: string, known: readonly string[]): string | undefined {
  if (known.length === 0) return undefined;
  // A word left half written, such as "due" for "due-after", is further away than its meaning.
  const longer = known.filter((one) => word.length > 2 && one.startsWith(word));
  if (longer.length === 1) return longer[0];
  const best = closest(word, known);
  return distance(word, best) <= Math.max(2, Math.floor(best.length / 2)) ? best : undefined;
}

/** `; did you mean "x"?` for the nearest known word, else the list of what is known. */
export function suggestion(word: string, known: readonly string[]): string {
  const best = nearest(word, known);
  if (best !== undefined) return `; did you mean "${best}"?`;
  return known.length > 0 ? `; known here: ${known.join(', ')}` : '';
}
