import yargs, { type Argv } from 'yargs';
import { MOST_SEEDS } from '../scenario/limits.ts';
import { suggestion } from '../scenario/nearest.ts';
import { EXIT } from './exit-codes.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

const file = (command: Argv) =>
  command.positional('file', { type: 'string', demandOption: true, describe: 'scenario in YAML' });

const json = { type: 'boolean', default: false, describe: 'print JSON instead of text' } as const;
const seeds = {
  type: 'number',
  requiresArg: true,
  describe: 'runs for each policy; else what the scenario says',
} as const;
const workers = {
  type: 'number',
  requiresArg: true,
  describe: 'worker threads; by default one a core',
} as const;
const out = {
  type: 'string',
  requiresArg: true,
  describe: 'folder for the report; else reports/ and the name of FILE',
} as const;
const noTwins = {
  type: 'boolean',
  default: false,
  describe: 'leave out the same runs without disturbances',
} as const;
const resume = {
  type: 'boolean',
  default: false,
  describe: 'go on from the runs that an interrupted command left',
} as const;
const policy = {
  type: 'string',
  requiresArg: true,
  describe: 'name of the policy; by default the first',
} as const;

/** Each takes one value and may be given several times. */
const several = { type: 'string', array: true, nargs: 1, requiresArg: true } as const;
const joined = {
  with: { ...several, describe: 'supplement in YAML to join to FILE, with policies or disturbances' },
} as const;
const only = { ...several, describe: 'name of a policy to compare with the first; by default all' } as const;
const modules = {
  'policy-module': {
    ...several,
    describe: 'TypeScript or JavaScript file with a policy as code, which is run',
  },
  'module-timeout': {
    type: 'number',
    requiresArg: true,
    describe: 'seconds that one call of a policy module may take; else 10',
  },
} as const;
const also = {
  ...several,
  describe: 'files to write besides: parquet, latex, markdown, svg, with commas between',
} as const;
const worth = {
  ...several,
  describe: 'what a difference must exceed to be worth having: "0.5 /h" or "scrap rate=0.5 %"',
} as const;
const pairs = {
  type: 'boolean',
  default: false,
  describe: 'print the comparison of every pair of policies, too',
} as const;
const target = {
  ...several,
  describe: 'what a run should reach, such as "throughput 480 /h": how often each policy does',
} as const;
/** What may be given more than once, as it is written and as the parser writes it. */
const SEVERAL: readonly string[] = [
  'with',
  'only',
  'over',
  'case',
  'also',
  'worth',
  'target',
  'policy-module',
  'policyModule',
];

const by = { type: 'string', requiresArg: true, describe: 'measure that decides; else throughput' } as const;
const stopping = {
  'until-decided': {
    type: 'boolean',
    default: false,
    describe: 'run until the best policy is chosen, in the measure of --worth',
  },
  'half-width': {
    type: 'string',
    requiresArg: true,
    describe: 'run until the mean of each policy is known to within this, such as "2 /h"',
  },
  by: { type: 'string', requiresArg: true, describe: 'measure that decides; else that of --worth' },
  sure: {
    type: 'string',
    requiresArg: true,
    describe: 'probability of a right choice; else 95 %',
  },
  procedure: { type: 'string', requiresArg: true, describe: 'sequential, or two-stage; else sequential' },
  'at-most': {
    type: 'number',
    requiresArg: true,
    describe: 'runs for each policy after which it ends anyhow; else 500',
  },
  within: {
    type: 'string',
    requiresArg: true,
    describe: 'time after which it ends anyhow, such as "10 min"; else 1 h',
  },
} as const;

const crossing = {
  severity: {
    type: 'string',
    requiresArg: true,
    describe: 'how many times as severe, with commas between; else 0,0.5,1,2',
  },
  case: { ...several, describe: 'name of a case, or of a disturbance where there are none; else all' },
  by,
} as const;

const varying = {
  over: { ...several, describe: 'place in FILE and its values, such as stations/trimming/buffer=8,16,24' },
  design: {
    type: 'string',
    requiresArg: true,
    describe: 'which settings are run: all, fraction, latin or screen; else all',
  },
  points: { type: 'number', requiresArg: true, describe: 'settings of a fraction or a Latin hypercube' },
  paths: { type: 'number', requiresArg: true, describe: 'paths of a screening; else 10' },
  policy: { ...several, describe: 'policy to follow, several to vary it as well; else the first' },
  by,
} as const;

const sizing = {
  sizing: { type: 'string', requiresArg: true, describe: 'name of the sizing; else the first' },
  seeds: { ...seeds, describe: 'runs that each choice of sizes gets at first; else 10' },
  choices: {
    type: 'number',
    requiresArg: true,
    describe: 'the most choices that a search looks at; else 150',
  },
  whole: { type: 'boolean', default: false, describe: 'simulate every choice of sizes instead of searching' },
  'at-most': { type: 'number', requiresArg: true, describe: 'runs in all; else 20000' },
  within: { type: 'string', requiresArg: true, describe: 'time in all, such as "1 h"; else 10 min' },
} as const;

const tracing = {
  seed: { type: 'number', requiresArg: true, default: 1, describe: 'which run' },
  part: {
    type: 'number',
    requiresArg: true,
    describe: 'number of the part to follow; else what the run came to',
  },
  'true-values': { type: 'boolean', default: false, describe: 'tell, too, what no policy sees' },
  out: {
    type: 'string',
    requiresArg: true,
    describe: 'folder for the event log of the run; else none is written',
  },
} as const;

const page = {
  type: 'string',
  requiresArg: true,
  describe: 'file for the page; else reports/classroom/ and the name of FILE',
} as const;

const OPTIONS = {
  compare: {
    ...joined,
    only,
    seeds,
    worth,
    pairs,
    target,
    workers,
    json,
    out,
    also,
    resume,
    'no-twins': noTwins,
    ...stopping,
    ...modules,
  },
  cross: { ...joined, only, ...crossing, seeds, workers, json, out, resume, ...modules },
  vary: { with: joined.with, ...varying, seeds, workers, json, out, resume, ...modules },
  size: { ...joined, ...sizing, workers, json, out, resume, ...modules },
  run: { ...joined, policy, seeds, workers, json, ...modules },
  check: { ...joined, json },
  classroom: { out: page },
  explain: { seeds: { ...seeds, describe: 'runs to simulate; else 10' }, json },
  trace: { ...joined, policy, ...tracing, json },
  watch: {
    ...joined,
    policy,
    seed: tracing.seed,
    out: { ...page, describe: 'file for the page; else reports/watch/ and the name of FILE' },
  },
  rerun: {
    workers,
    out: { ...out, describe: 'folder that keeps what is made anew; else it is not kept' },
  },
};
/** What the parser itself answers. */
const COMPLETION = 'completion';
const COMMANDS = [...Object.keys(OPTIONS), COMPLETION];
/** The most that is taken for a whole number: each run and each worker needs memory. */
const MOST: Readonly<Record<string, number>> = {
  seeds: MOST_SEEDS,
  seed: MOST_SEEDS,
  part: 1e9,
  workers: 256,
  'module-timeout': 3600,
  points: 10_000,
  paths: 5000,
  choices: 10_000,
  'at-most': 100_000,
};

/** Refuses an option given twice that may not be, a count that is none, and an empty name. */
function soundOptions(given: Record<string, unknown>): true {
  for (const [key, value] of Object.entries(given)) {
    if (key !== '_' && !SEVERAL.includes(key) && Array.isArray(value))
      throw new UsageError(`--${key} is given more than once`);
  }
  for (const [key, most] of Object.entries(MOST)) {
    const value = given[key];
    if (value === undefined) continue;
    if (!Number.isInteger(value) || (value as number) < 1 || (value as number) > most) {
      throw new UsageError(`--${key} expects a whole number from 1 to ${most}`);
    }
  }
  for (const key of SEVERAL)
    if ((given[key] as readonly string[] | undefined)?.includes(''))
      throw new UsageError(`--${key} expects a value after it`);
  if (given.out === '') throw new UsageError('--out expects a name after it');
  return true;
}

const inOneWord = (option: string): string =>
  option.replace(/-+(.)/g, (_, letter: string) => letter.toUpperCase());

/** A complaint of the argument parser in words that name the remedy. */
function reworded(message: string, args: readonly string[]): string {
  const [, unknown] = /^Unknown arguments?: (.+)$/.exec(message) ?? [];
  if (unknown !== undefined) {
    const [command = ''] = args;
    const known = Object.keys(OPTIONS[command as keyof typeof OPTIONS] ?? {}).map((key) => `--${key}`);
    const options = args
      .filter((arg) => arg.startsWith('-'))
      .map((arg) => arg.replace(/=.*$/s, '').replace(/^--?/, ''));
    // The parser names an option with hyphens a second time, as one word.
    const echoes = new Set(options.filter((option) => option.includes('-')).map(inOneWord));
    return unknown
      .split(', ')
      .filter((word) => !echoes.has(word))
      .map((word) =>
        options.includes(word)
          ? `--${word} is no option here${suggestion(`--${word}`, known)}`
          : `"${word}" is one word too many; a name with spaces needs quotes`,
      )
      .join('; ');
  }
  if (message.startsWith('Not enough non-option arguments')) {
    if (args[0] === 'rerun') return 'name a report, such as reports/tray-cell';
    if (args[0] === 'classroom') return 'name an exercise, such as scenarios/exercises/buffer.yaml';
    return 'name a scenario, such as scenarios/tray-cell.yaml';
  }
  const [, bare] = /^Not enough arguments following: (.+)$/.exec(message) ?? [];
  if (bare === undefined) return message;
  const below = args.find((arg, i) => args[i - 1] === `--${bare}` && /^-\d/.test(arg));
  return `--${bare} expects a value after it${below === undefined ? '' : ` that is not below zero, and "${below}" is`}`;
}

/** An example on a line of its own, so that it can be copied; beside its meaning it would be broken in two. */
const exampleOf = (command: string, meaning: string) => `Example, ${meaning}:\n  mendline ${command}`;

/** The command line, as a table of contents: each command lives in its own file, loaded when asked for. */
export async function main(args: readonly string[]): Promise<number> {
  let code: number = EXIT.done;
  const parser = yargs([...args])
    .scriptName('mendline')
    // No option is turned off by "no-" before its name; one begins so itself.
    .parserConfiguration({ 'boolean-negation': false })
    .usage(
      '$0 COMMAND FILE\n\nFinds out which way of recovering from disturbances keeps good assemblies coming.',
    )
    .command(
      'compare <file>',
      'run every policy under the same seeds and compare them',
      (command) =>
        file(command)
          .options(OPTIONS.compare)
          .check(soundOptions)
          .epilogue(exampleOf('compare scenarios/tray-cell.yaml --seeds 10', 'a quick look at the demo')),
      async (given) => {
        const { compareCommand } = await import('./compare.ts');
        code = await compareCommand(given as never);
      },
    )
    .command(
      'cross <file>',
      'run every policy in every case of disturbances at several severities',
      (command) =>
        file(command)
          .options(OPTIONS.cross)
          .check(soundOptions)
          .epilogue(
            exampleOf('cross scenarios/tray-cell.yaml --seeds 10', 'who is best in which case, and how far'),
          ),
      async (given) => {
        const { crossCommand } = await import('./cross.ts');
        code = await crossCommand(given as never);
      },
    )
    .command(
      'vary <file>',
      'run the line with other values than those written and say what they do',
      (command) =>
        file(command)
          .options({
            ...OPTIONS.vary,
            seeds: { ...seeds, describe: 'runs at each setting; else what the scenario says' },
          })
          .check((own) => soundOptions({ ...own, policy: undefined }))
          .epilogue(
            exampleOf(
              'vary scenarios/two-stations.yaml --over "stations/second/buffer=1,4,9"',
              'what more room is worth',
            ),
          ),
      async (given) => {
        const { varyCommand } = await import('./vary.ts');
        code = await varyCommand(given as never);
      },
    )
    .command(
      'size <file>',
      'find how much buffer, crew or stock is enough, at least cost',
      (command) =>
        file(command)
          .options(OPTIONS.size)
          .check(soundOptions)
          .epilogue(exampleOf('size scenarios/lid-line.yaml', 'the cheapest that makes enough lids')),
      async (given) => {
        const { sizeCommand } = await import('./size.ts');
        code = await sizeCommand(given as never);
      },
    )
    .command(
      'run <file>',
      'run one policy',
      (command) =>
        file(command)
          .options(OPTIONS.run)
          .check(soundOptions)
          .epilogue(
            exampleOf('run scenarios/tray-cell.yaml --policy "retune forming"', 'one policy of the demo'),
          ),
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
          .options(OPTIONS.check)
          .check(soundOptions)
          .epilogue(
            exampleOf('check scenarios/tray-cell.yaml', 'the line, its bottleneck, what will disturb it'),
          ),
      async (given) => {
        const { checkCommand } = await import('./check.ts');
        code = checkCommand(given as never);
      },
    )
    .command(
      'explain <file>',
      'predict what dimensions come to, beside what an undisturbed line gives',
      (command) =>
        file(command)
          .options(OPTIONS.explain)
          .check(soundOptions)
          .epilogue(
            exampleOf('explain scenarios/tray-cell.yaml', 'spread, fit and gauging before any comparison'),
          ),
      async (given) => {
        const { explainCommand } = await import('./explain.ts');
        code = await explainCommand(given as never);
      },
    )
    .command(
      'trace <file>',
      'follow one part through one run, or write down all that happened',
      (command) =>
        file(command)
          .options(OPTIONS.trace)
          .check(soundOptions)
          .epilogue(
            exampleOf('trace scenarios/tray-cell.yaml --seed 1 --part 812', 'from sheet to assembly'),
          ),
      async (given) => {
        const { traceCommand } = await import('./trace.ts');
        code = await traceCommand(given as never);
      },
    )
    .command(
      'watch <file>',
      'write a page that plays one run back',
      (command) =>
        file(command)
          .options(OPTIONS.watch)
          .check(soundOptions)
          .epilogue(
            exampleOf(
              'watch scenarios/tray-cell.yaml --policy "stop and fix"',
              'a day of the demo, to be watched',
            ),
          ),
      async (given) => {
        const { watchCommand } = await import('./watch.ts');
        code = watchCommand(given as never);
      },
    )
    .command(
      'classroom <file>',
      'write a page with the engine inside, on which a class works an exercise',
      (command) =>
        command
          .positional('file', { type: 'string', demandOption: true, describe: 'exercise in YAML' })
          .options(OPTIONS.classroom)
          .check(soundOptions)
          .epilogue(
            exampleOf('classroom scenarios/exercises/buffer.yaml', 'one of the exercises that come with it'),
          ),
      async (given) => {
        const { classroomCommand } = await import('./classroom.ts');
        code = classroomCommand(given as never);
      },
    )
    .command(
      'rerun <report>',
      'make a report again from what it records, and compare byte for byte',
      (command) =>
        command
          .positional('report', {
            type: 'string',
            demandOption: true,
            describe: 'folder of a report, or a document such as its comparison.json',
          })
          .options(OPTIONS.rerun)
          .check(soundOptions)
          .epilogue(exampleOf('rerun reports/tray-cell', 'whether the shipped report still holds')),
      async (given) => {
        const { rerunCommand } = await import('./rerun.ts');
        code = await rerunCommand(given as never);
      },
    )
    .completion(COMPLETION, 'print a script that lets bash or zsh complete commands and options')
    .demandCommand(
      1,
      'say what to do: compare, cross, vary, size, run, check, explain, trace, watch, classroom or rerun',
    )
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
      throw new UsageError(
        `${reworded(message, args).replace(/[^?]$/, '$&.')} "mendline --help" shows how it is used`,
      );
    });
  try {
    const [first] = args;
    if (first !== undefined && !first.startsWith('-') && !COMMANDS.includes(first)) {
      throw new UsageError(`there is no command "${first}"${suggestion(first, COMMANDS)}`);
    }
    await parser.parseAsync();
    return code;
  } catch (error) {
    // Loaded only now: it knows the errors of the whole program, and `--help` should start at once.
    const { explainFailure } = await import('./failure.ts');
    return explainFailure(error);
  }
}
