import { createHash } from 'node:crypto';
import { causeRates } from '../experiment/cause-rates.ts';
import { compare } from '../experiment/comparison.ts';
import { costRows } from '../experiment/cost-rows.ts';
import { lookedAt } from '../experiment/looked.ts';
import { recoveredOf } from '../experiment/recovered.ts';
import { spreadOf } from '../experiment/spread.ts';
import { estimatedStocks } from '../experiment/stock-estimates.ts';
import { targetsMet } from '../experiment/targets.ts';
import { compareTwins } from '../experiment/twins.ts';
import { wrap } from '../report/columns.ts';
import { runsCsv } from '../report/csv.ts';
import { comparisonPieces } from '../report/json.ts';
import { narrowedSentences } from '../report/narrowed-text.ts';
import { type Origin, typed } from '../report/origin.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { comparisonPage } from '../report/page.ts';
import { comparisonText } from '../report/terminal.ts';
import { twinsCsv } from '../report/twins-csv.ts';
import { listed } from '../report/words.ts';
import { boundLast, boundOf } from '../scenario/bound.ts';
import { alsoKinds, writeAlso } from './also.ts';
import { EXIT } from './exit-codes.ts';
import {
  doUntilNarrow,
  type GivenHalfWidth,
  type NarrowRuns,
  narrowingOf,
  narrowWords,
} from './half-width.ts';
import { chosenPolicies, joinedOf, joiningFolder, joiningWords } from './joining.ts';
import { journalOf } from './journal-of-command.ts';
import { coloured, columns } from './look.ts';
import { modulesOf } from './modules.ts';
import { defaultFolder, doRuns, doTwins, UNFINISHED } from './runs.ts';
import { readSettled, shownPilot } from './settled-file.ts';
import { settledNote } from './settled-note.ts';
import { outOfTime, refuseWithout } from './stopping.ts';
import { targetsGiven } from './targets.ts';
import type { GivenSelection } from './until-decided.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';
import { unusedWorth, worthOf } from './worth.ts';

const RUNS = 'runs.csv';
const TWINS = 'twins.csv';

interface Given extends GivenSelection, GivenHalfWidth {
  readonly untilDecided?: boolean;
  readonly noTwins?: boolean;
  readonly also?: readonly string[];
  readonly pairs?: boolean;
  readonly target?: readonly string[];
}

/** The words of the command without what leaves the results alone, so that the report is the same on any machine. */
function provenanceCommand(given: Given, narrow: NarrowRuns | undefined): string[] {
  const { file, seeds, noTwins, policyModule = [], worth = [], target = [] } = given;
  const also = alsoKinds(given.also);
  return [
    ...['compare', file, ...joiningWords(given)],
    ...(narrow ? narrowWords(given, narrow.narrowed) : seeds === undefined ? [] : ['--seeds', String(seeds)]),
    ...(noTwins ? ['--no-twins'] : []),
    ...worth.flatMap((amount) => ['--worth', amount]),
    ...target.flatMap((text) => ['--target', text]),
    ...policyModule.flatMap((path) => ['--policy-module', path]),
    ...(also.length > 0 ? ['--also', also.join(',')] : []),
  ];
}

const sha256Of = (text: string) => createHash('sha256').update(text).digest('hex');

/** Compares all policies, or those chosen, where anything disturbs the line with their twins, too. Writes a report unless JSON alone is asked for; JSON with --out does both. */
export async function compareCommand(given: Given): Promise<number> {
  if (given.untilDecided) return (await import('./until-decided.ts')).untilDecidedCommand(given);
  refuseWithout(given);
  const also = alsoKinds(given.also);
  const worth = worthOf(given.worth);
  if (also.length > 0 && given.json && given.out === undefined)
    throw new UsageError('--also writes files; with --json, name a folder for them with --out FOLDER');
  const wished = targetsGiven(given.target);
  const read = await readSettled(given);
  const pilot = read.pilot ?? (await shownPilot(read, given));
  const { scenario, sha256, text } = read;
  const modules = await modulesOf(given, scenario);
  const { files } = modules;
  const chosen = chosenPolicies(modules, given);
  const joined = joinedOf(read);
  const narrowing =
    given.halfWidth === undefined ? undefined : narrowingOf({ ...given, halfWidth: given.halfWidth }, chosen);
  const suffix = `${joiningFolder(given)}${given.halfWidth === undefined ? '' : '-half-width'}`;
  const wanted = given.out ?? (given.json ? undefined : defaultFolder(given.file, given.seeds, suffix));
  const folder = wanted === undefined ? undefined : new OutputFolder(wanted);
  const journal = journalOf(folder, { read, files, resume: given.resume });
  const ordered = boundLast(chosen);
  const bound = boundOf(ordered);
  const shared = { policies: ordered, workers: given.workers, look: true, modules, out: wanted, journal };
  const policies = ordered.map((policy) => policy.name);
  const twinned = scenario.disturbances.length > 0 && !given.noTwins;
  const narrow = narrowing && (await doUntilNarrow(read, narrowing, { ...shared, twinned }));
  const seeds = narrow?.narrowed.seeds ?? given.seeds ?? scenario.run.seeds;
  const options = { ...shared, seeds, done: narrow?.outcomes };
  const pairs = twinned ? await doTwins(read, options) : [];
  const outcomes = twinned ? pairs.map(({ run }) => run) : await doRuns(read, options);
  const command = provenanceCommand(given, narrow);
  const comparison = compare(policies, outcomes, bound, worth);
  for (const note of unusedWorth(worth, comparison)) process.stderr.write(`${note}\n`);
  const spread = spreadOf(policies, outcomes);
  const causes = causeRates(scenario, policies, outcomes);
  const looked = lookedAt(scenario, policies, outcomes) ?? undefined;
  const targets = targetsMet(wished, policies, outcomes);
  const recovered = bound === null ? undefined : recoveredOf(policies, outcomes, bound);
  const twins = twinned ? compareTwins(policies, pairs, scenario.run) : undefined;
  const estimated = estimatedStocks(scenario, chosen);
  const tables: Record<string, string> = {
    [RUNS]: runsCsv(outcomes),
    ...(twins && { [TWINS]: twinsCsv(twins) }),
  };
  const found = { comparison, twins, recovered, pilot, spread, targets, causes, looked };
  const narrowed = narrow?.narrowed;
  const source = {
    ...found,
    outcomes,
    narrowed,
    version: version(),
    command,
    csvSha256: Object.fromEntries(Object.entries(tables).map(([name, text]) => [name, sha256Of(text)])),
    scenario: { file: given.file, title: scenario.title, sha256 },
    joined,
    modules: files,
    estimated,
  };
  if (given.json) for (const piece of comparisonPieces(source)) process.stdout.write(piece);
  else
    process.stdout.write(
      comparisonText(
        comparison,
        { title: scenario.title, colour: coloured(), width: columns(), pairs: given.pairs ?? false },
        twins,
        recovered,
        { spread, targets },
      ),
    );
  const said = narrowed && narrowedSentences(narrowed);
  if (narrowing && narrowed && narrowed.most < narrowing.most) console.error(outOfTime(narrowed.most));
  if (!given.json && said)
    process.stdout.write(`${said.flatMap((text) => wrap(text, columns(), '  ')).join('\n')}\n`);
  if (!given.json) process.stdout.write(settledNote(read));
  if (!folder) return EXIT.done;
  const origin: Origin = {
    scenario: { file: given.file, sha256 },
    supplements: joined,
    modules: files.map(({ path, sha256 }) => ({ file: path, sha256 })),
    version: version(),
    command,
    seeds: seeds === 1 ? '1' : `1 to ${seeds}`,
  };
  const page = comparisonPage({
    ...found,
    narrowed,
    costs: costRows(policies, outcomes),
    estimated,
    title: scenario.title,
    about: scenario.about,
    scenarioText: text,
    joined,
    provenance: {
      file: given.file,
      sha256,
      modules: files,
      version: origin.version,
      command: typed(command),
      seeds: origin.seeds,
    },
  });
  const path = folder.write('comparison.html', page);
  folder.write('comparison.json', comparisonPieces(source));
  if (!twins) folder.remove(TWINS);
  for (const [name, text] of Object.entries(tables)) folder.write(name, text);
  const { title } = scenario;
  const asked = await writeAlso(folder, also, { ...found, title, outcomes, origin });
  folder.remove(UNFINISHED);
  journal?.finish();
  const beside = wrap(
    `Beside it: ${listed(['comparison.json', ...Object.keys(tables), ...asked])}`,
    columns(),
  );
  if (!given.json) process.stdout.write(`\nReport: ${path}\n${beside.join('\n')}\n`);
  return EXIT.done;
}
