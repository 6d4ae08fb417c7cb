import { suggestion } from '../scenario/nearest.ts';
import type { Command } from './command.ts';
import { inOneWord } from './sound-options.ts';

/** Words that a command does not know, each with what was meant. */
function unknownWords(
  words: readonly string[],
  args: readonly string[],
  command: Command | undefined,
): string {
  const known = Object.keys(command?.options ?? {}).map((key) => `--${key}`);
  const options = args
    .filter((arg) => arg.startsWith('-'))
    .map((arg) => arg.replace(/=.*$/s, '').replace(/^--?/, ''));
  // The parser names an option with hyphens a second time, as one word.
  const echoes = new Set(options.filter((option) => option.includes('-')).map(inOneWord));
  return words
    .filter((word) => !echoes.has(word))
    .map((word) =>
      options.includes(word)
        ? `--${word} is no option here${suggestion(`--${word}`, known)}`
        : `"${word}" is one word too many; a name with spaces needs quotes`,
    )
    .join('; ');
}

/** A complaint of the argument parser in words that name the remedy. */
export function reworded(message: string, args: readonly string[], command: Command | undefined): string {
  const [, unknown] = /^Unknown arguments?: (.+)$/.exec(message) ?? [];
  if (unknown !== undefined) return unknownWords(unknown.split(', '), args, command);
  if (message.startsWith('Not enough non-option arguments') && command) return `name ${command.takes.such}`;
  const [, bare] = /^Not enough arguments following: (.+)$/.exec(message) ?? [];
  if (bare === undefined) return message;
  const below = args.find((arg, i) => args[i - 1] === `--${bare}` && /^-\d/.test(arg));
  return `--${bare} expects a value after it${below === undefined ? '' : ` that is not below zero, and "${below}" is`}`;
}
