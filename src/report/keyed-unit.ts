/** The unit that the end of a measure's key names; `1` is a plain ratio or an amount of money. */
export function keyedUnit(key: string): string {
  if (key.endsWith('_per_h')) return '1/h';
  if (key.endsWith('_parts')) return 'parts';
  if (key.endsWith('_s')) return 's';
  return '1';
}
