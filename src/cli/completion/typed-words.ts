/** Where bash begins a new word of its own inside one of the shell's. */
const BREAKS = '=:@';
/** What a backslash takes its meaning from between double quotes. */
const ESCAPED = '"\\$`';

interface TypedWords {
  /** As the shell would pass them on; the last is being typed, and may be empty. */
  readonly words: readonly string[];
  /** How much of the last one bash leaves alone, so that what completes it must begin behind. */
  readonly kept: number;
}

/** The words of a line of bash as far as it is typed: quotes may still be open. */
export function typedWords(line: string): TypedWords {
  const words = [''];
  let kept = 0;
  let quote = '';
  let begun = false;
  const take = (text: string) => {
    words.push(words.pop()! + text);
    begun = true;
  };
  for (let i = 0; i < line.length; i++) {
    const here = line[i]!;
    const next = line[i + 1] ?? '';
    if (here === quote) quote = '';
    else if (here === '\\' && (quote === '' || (quote === '"' && ESCAPED.includes(next)))) {
      take(next);
      i++;
    } else if (quote !== '') take(here);
    else if (here === '"' || here === "'") {
      quote = here;
      begun = true;
    } else if (/\s/.test(here)) {
      if (begun) words.push('');
      begun = false;
      kept = 0;
    } else {
      take(here);
      if (BREAKS.includes(here)) kept = words.at(-1)!.length;
    }
  }
  return { words, kept };
}
