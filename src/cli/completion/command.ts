import { EXIT } from '../exit-codes.ts';
import { UsageError } from '../usage-error.ts';
import { completed } from './completed.ts';
import { SHELLS } from './shells.ts';
import { typedWords } from './typed-words.ts';

/** Prints the script for a shell; for the one in use where none is named. */
export function completionCommand({ shell }: { readonly shell?: string | undefined }): number {
  const inUse = process.env.SHELL?.endsWith('zsh') ? 'zsh' : 'bash';
  const wanted = shell ?? inUse;
  const script = Object.hasOwn(SHELLS, wanted) ? SHELLS[wanted] : undefined;
  if (script === undefined)
    throw new UsageError(`there is no completion for "${wanted}"; name ${Object.keys(SHELLS).join(' or ')}`);
  process.stdout.write(script);
  return EXIT.done;
}

/** Answers a script: `files`, or `names` and below it each word that completes what is typed. */
export async function answerShell([shell, ...given]: readonly string[]): Promise<number> {
  const { words, kept } = shell === 'bash' ? typedWords(given[0] ?? '') : { words: given, kept: 0 };
  const found = await completed(shell === 'bash' ? words.slice(1) : words);
  const answer = found === 'files' ? ['files'] : ['names', ...found.map((word) => word.slice(kept))];
  process.stdout.write(`${answer.join('\n')}\n`);
  return EXIT.done;
}
