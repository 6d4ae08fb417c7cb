import yargs, { type Argv } from 'yargs';
import { suggestion } from '../scenario/nearest.ts';
import type { Command } from './command.ts';
import { COMMANDS } from './commands.ts';
import { ASK, COMPLETION } from './completion/shells.ts';
import { EXIT } from './exit-codes.ts';
import { pastable } from './pastable.ts';
import { reworded } from './reworded.ts';
import { soundOptions } from './sound-options.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

const NAMES = COMMANDS.map(({ name }) => name);

/** Its example stands on a line of its own, so that it can be copied; beside its meaning it would be broken in two. */
const shown = (parser: Argv, command: Command) =>
  parser
    .positional(command.takes.name, { type: 'string', demandOption: true, describe: command.takes.describe })
    .options(command.options)
    .check((given) => soundOptions(command, given))
    .epilogue(`Example, ${command.example[1]}:\n${pastable(`mendline ${command.example[0]}`)}`);

function parserOf(args: readonly string[], done: (code: number) => void): Argv {
  const parser = yargs([...args])
    .scriptName('mendline')
    // No option is turned off by "no-" before its name; one begins so itself.
    .parserConfiguration({ 'boolean-negation': false })
    .usage(
      '$0 COMMAND FILE\n\nFinds out which way of recovering from disturbances keeps good assemblies coming.',
    );
  for (const command of COMMANDS)
    parser.command(
      `${command.name} <${command.takes.name}>`,
      command.describe,
      (own) => shown(own, command),
      async (given) => done(await command.run(given as never)),
    );
  return parser
    .command(
      `${COMPLETION} [shell]`,
      'print a script that lets bash or zsh complete what is typed',
      (own) => own.positional('shell', { type: 'string', describe: 'bash or zsh; else the one in use' }),
      async (given) => done((await import('./completion/command.ts')).completionCommand(given)),
    )
    .demandCommand(1, `say what to do: ${NAMES.slice(0, -1).join(', ')} or ${NAMES.at(-1)}`)
    .strict()
    .help()
    .alias('help', 'h')
    .version(version())
    .wrap(80)
    .locale('en')
    .exitProcess(false)
    .fail((message, error) => {
      // yargs's own complaints are about usage; anything else comes from a command.
      if (error && error.name !== 'YError') throw error;
      const command = COMMANDS.find(({ name }) => name === args[0]);
      const help = `mendline ${command ? `${command.name} ` : ''}--help`;
      throw new UsageError(
        `${reworded(message, args, command).replace(/[^?]$/, '$&.')} "${help}" shows how it is used`,
      );
    });
}

/** The command line: what it knows stands in `commands.ts`. */
export async function main(args: readonly string[]): Promise<number> {
  let code: number = EXIT.done;
  const parser = parserOf(args, (ended) => {
    code = ended;
  });
  try {
    const [first] = args;
    if (first === ASK) return (await import('./completion/command.ts')).answerShell(args.slice(1));
    const known = [...NAMES, COMPLETION];
    if (first !== undefined && !first.startsWith('-') && !known.includes(first)) {
      throw new UsageError(`there is no command "${first}"${suggestion(first, known)}`);
    }
    await parser.parseAsync();
    return code;
  } catch (error) {
    // Loaded only now: it knows the errors of the whole program, and `--help` should start at once.
    const { explainFailure } = await import('./failure.ts');
    return explainFailure(error);
  }
}
