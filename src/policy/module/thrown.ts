/** `, at line 14` where the trace of calls passes through the file, else nothing. */
export function lineIn(stack: unknown, source: string): string {
  if (typeof stack !== 'string') return '';
  const at = stack.indexOf(`${source}:`);
  const [line] = /^\d+/.exec(at < 0 ? '' : stack.slice(at + source.length + 1)) ?? [];
  return line === undefined ? '' : `, at line ${line}`;
}

/** What a module threw, which may be anything, in words to follow a verb, with the line of its file where that tells. */
export function thrownInWords(thrown: unknown, source: string): string {
  try {
    const { message, name, stack } = Object(thrown) as Partial<Record<'message' | 'name' | 'stack', unknown>>;
    const kind = typeof name === 'string' && name !== 'Error' ? `${name}: ` : '';
    const words = typeof message === 'string' ? `${kind}${message}` : String(thrown);
    return `${lineIn(stack, source)}: ${words}`;
  } catch {
    return ' something that has no words';
  }
}
