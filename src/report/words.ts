/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[], and = 'and'): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} ${and} ${items.at(-1)}`;
}

/** Names in a row, between quotation marks where one of them has a comma or an `and` in it. */
export function listedNames(names: readonly string[]): string {
  const quoted = quotedOf(names);
  return listed(names.map(quoted));
}

/** How each of the names is written in such a row. */
export function quotedOf(names: readonly string[]): (name: string) => string {
  return names.some((name) => /,| and /.test(name)) ? (name) => `"${name}"` : (name) => name;
}

/** `1 run`, `2 runs`; the plural may be given where an s does not make it. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
