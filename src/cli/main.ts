import yargs, { type Argv } from 'yargs';
import { EXIT } from './exit-codes.ts';
import { explainFailure, UsageError } from './failure.ts';
import { version } from './version.ts';

const file = (command: Argv) =>
  command.positional('file', { type: 'string', demandOption: true, describe: 'scenario in YAML' });

const json = { type: 'boolean', default: false, describe: 'print JSON instead of text' } as const;
const seeds = {
  type: 'number',
  describe: 'runs for each policy, instead of what the scenario says',
} as const;
const workers = { type: 'number', describe: 'worker threads; by default one a core' } as const;
const out = { type: 'string', describe: 'folder for the report' } as const;

/** Refuses anything but a whole number, 1 or more, where a count is given. */
function wholeNumbers(given: Record<string, unknown>): true {
  for (const key of ['seeds', 'workers']) {
    const value = given[key];
    if (value !== undefined && !(Number.isInteger(value) && (value as number) >= 1)) {
      throw new UsageError(`--${key} expects a whole number, 1 or more`);
    }
  }
  return true;
}

/** The command line, as a table of contents: each command lives in its own file, loaded when asked for. */
export async function main(args: readonly string[]): Promise<number> {
  let code: number = EXIT.done;
  const parser = yargs([...args])
    .scriptName('mendline')
    .usage(
      '$0 COMMAND FILE\n\nFinds out which way of recovering from disturbances keeps good assemblies coming.',
    )
    .command(
      'compare <file>',
      'run every policy under the same seeds and compare them',
      (command) =>
        file(command)
          .options({ seeds, workers, json, out })
          .check(wholeNumbers)
          .example('$0 compare scenarios/tray-cell.yaml --seeds 10', 'a quick look at the demo'),
      async (given) => {
        const { compareCommand } = await import('./compare.ts');
        code = await compareCommand(given as never);
      },
    )
    .command(
      'run <file>',
      'run one policy',
      (command) =>
        file(command)
          .options({
            policy: { type: 'string', describe: 'name of the policy; by default the first' },
            seeds,
            workers,
            json,
          })
          .check(wholeNumbers)
          .example('$0 run scenarios/tray-cell.yaml --policy "retune forming"', 'one policy of the demo'),
      async (given) => {
        const { runCommand } = await import('./run.ts');
        code = await runCommand(given as never);
      },
    )
    .command(
      'check <file>',
      'check a scenario and explain it, without running it',
      (command) =>
        file(command)
          .options({ json })
          .example('$0 check scenarios/tray-cell.yaml', 'the line, its bottleneck, its troubles'),
      async (given) => {
        const { checkCommand } = await import('./check.ts');
        code = checkCommand(given as never);
      },
    )
    .demandCommand(1, 'say what to do: compare, run or check')
    .strict()
    .recommendCommands()
    .help()
    .alias('help', 'h')
    .version(version())
    .wrap(80)
    .locale('en')
    .exitProcess(false)
    .fail((message, error) => {
      // yargs's own complaints are about usage; anything else comes from a command.
      if (error && error.name !== 'YError') throw error;
      throw new UsageError(`${message}. "mendline --help" shows how it is used`);
    });
  try {
    await parser.parseAsync();
    return code;
  } catch (error) {
    return explainFailure(error);
  }
}
