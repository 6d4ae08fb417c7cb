import { createHash } from 'node:crypto';
import type { ScenarioFile } from '../experiment/scenario-file.ts';
import { Budget } from '../experiment/selection/budget.ts';
import { type Choice, type Selection, select } from '../experiment/selection/select.ts';
import { PROCEDURES, type ProcedureName } from '../experiment/selection/settings.ts';
import { runsCsv } from '../report/csv.ts';
import { typed } from '../report/origin.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { selectionJson } from '../report/selection/selection-json.ts';
import { selectionPage } from '../report/selection/selection-page.ts';
import { selectionText } from '../report/selection/selection-text.ts';
import { listed } from '../report/words.ts';
import { isBound } from '../scenario/bound.ts';
import { suggestion } from '../scenario/nearest.ts';
import { readQuantity } from '../scenario/units.ts';
import { EXIT } from './exit-codes.ts';
import { chosenPolicies, type Joining, joinedOf, joiningFolder, joiningWords } from './joining.ts';
import { journalOf } from './journal-of-command.ts';
import { coloured, columns } from './look.ts';
import { measureNamed } from './measure-named.ts';
import { type GivenModules, type Modules, modulesOf } from './modules.ts';
import { defaultFolder, UNFINISHED, withRunner } from './runs.ts';
import { readSettled } from './settled-file.ts';
import { settledNote } from './settled-note.ts';
import { type GivenStopping, outOfTime, type Stopping, stoppingOf } from './stopping.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';
import { worthOf } from './worth.ts';

const RUNS = 'runs.csv';

export interface GivenSelection extends Joining, GivenModules, GivenStopping {
  readonly file: string;
  readonly by?: string;
  readonly worth?: readonly string[];
  readonly sure?: string;
  readonly procedure?: string;
  readonly workers?: number;
  readonly json: boolean;
  readonly resume?: boolean;
  readonly out?: string;
  readonly also?: readonly string[];
  readonly halfWidth?: string;
}

/** The probability of a right choice among so many policies. */
function sureOf(sure: string, policies: number): number {
  const found = readQuantity(sure);
  const blind = 1 / policies;
  if (found?.dimension !== 'share')
    throw new UsageError(`--sure "${sure}" is no share; it expects one such as "95 %"`);
  if (found.value >= 1)
    throw new UsageError(`--sure "${sure}": no number of runs makes a choice certain; 99 % is much`);
  if (found.value <= blind)
    throw new UsageError(
      `--sure "${sure}" is no more than a blind guess among ${policies} policies has; name more, such as "95 %"`,
    );
  return found.value;
}

function procedureOf(procedure: string): ProcedureName {
  const found = PROCEDURES.find((name) => name === procedure);
  if (found) return found;
  throw new UsageError(`--procedure knows no "${procedure}"${suggestion(procedure, PROCEDURES)}`);
}

/** The measure that decides, and the lead in it that is worth finding. */
function worthOfChoice({ by, worth }: GivenSelection): Pick<Choice, 'measure'> & { worth: number } {
  const leads = worthOf(worth);
  const [only] = leads.size === 1 ? leads.keys() : [];
  const measure = measureNamed(by ?? only ?? 'throughput', '--by');
  const found = leads.get(measure.key);
  const unit = measure.shown.unit.replace(/^good /, '');
  if (found === undefined)
    throw new UsageError(
      `--until-decided needs the lead in ${measure.name} that is worth finding, for between policies that are level nothing would ever decide; say it, such as --worth "${measure.name}=2 ${unit}"`,
    );
  if (leads.size > 1)
    throw new UsageError(
      `--until-decided goes by one measure, here ${measure.name}; leave out --worth of the others`,
    );
  return { measure, worth: found };
}

function choiceOf(given: GivenSelection, policies: readonly string[], stopping: Stopping): Choice {
  const { measure, worth } = worthOfChoice(given);
  if (policies.length < 2) {
    const remedy = 'name another by --only, write one under "policies:" or join one by --with';
    throw new UsageError(`"${policies[0]}" is the only policy, so there is nothing to choose; ${remedy}`);
  }
  const { firstStage, most } = stopping;
  const settings = {
    procedure: procedureOf(given.procedure ?? 'sequential'),
    ...{ better: measure.better, worth, confidence: sureOf(given.sure ?? '95 %', policies.length) },
    ...{ firstStage, most },
  };
  return { policies, measure, settings };
}

/**
 * The words of the command without what leaves the results alone. Where the time was over they say what it sufficed for, so
 * that they give the same again on any machine.
 */
function provenanceCommand(given: GivenSelection, asked: Stopping, found: Selection): string[] {
  const { file, by, worth = [], sure, procedure, policyModule = [] } = given;
  const { firstStage, most } = found.settings;
  const seeds = firstStage === asked.firstStage ? given.seeds : firstStage;
  const atMost = most === asked.most ? given.atMost : most;
  return [
    ...['compare', file, ...joiningWords(given), '--until-decided'],
    ...worth.flatMap((one) => ['--worth', one]),
    ...(by === undefined ? [] : ['--by', by]),
    ...(sure === undefined ? [] : ['--sure', sure]),
    ...(procedure === undefined ? [] : ['--procedure', procedure]),
    ...(seeds === undefined ? [] : ['--seeds', String(seeds)]),
    ...(atMost === undefined ? [] : ['--at-most', String(atMost)]),
    ...policyModule.flatMap((path) => ['--policy-module', path]),
  ];
}

interface Running {
  readonly given: GivenSelection;
  readonly modules: Modules;
  readonly stopping: Stopping;
  readonly out: string | undefined;
  readonly journal: ReturnType<typeof journalOf>;
}

function choose(read: ScenarioFile, choice: Choice, { given, stopping, ...running }: Running) {
  const { policies, measure, settings } = choice;
  const procedure = {
    most: policies.length * settings.most,
    words: 'a choice of the best policy',
    policies: policies.length,
    seeds: settings.most,
    twins: false,
    settings: { policies, by: measure.key, ...settings },
  };
  const budget = new Budget(stopping.within, () => performance.now() / 1000);
  return withRunner(read, procedure, { workers: given.workers, ...running }, (runner) =>
    select(choice, (tasks) => runner.do(tasks), budget),
  );
}

/** Runs policies until one is chosen. Writes a report unless JSON alone is asked for; JSON with --out does both. */
export async function untilDecidedCommand(given: GivenSelection): Promise<number> {
  if (given.also !== undefined)
    throw new UsageError('--also is of no use with --until-decided; runs.csv and selection.json hold all there is'); // biome-ignore format: one line reads better
  if (given.halfWidth !== undefined)
    throw new UsageError('--until-decided and --half-width stop at different times; leave out one of them');
  const stopping = stoppingOf(given);
  const read = await readSettled(given);
  const { scenario, sha256 } = read;
  const modules = await modulesOf(given, scenario);
  const { files } = modules;
  // A bound would be the best, and nobody can choose it.
  const policies = chosenPolicies(modules, given).filter((policy) => !isBound(policy));
  const choice = choiceOf(
    given,
    policies.map(({ name }) => name),
    stopping,
  );
  const suffix = `${joiningFolder(given)}-until-decided`;
  const wanted = given.out ?? (given.json ? undefined : defaultFolder(given.file, given.seeds, suffix));
  const folder = wanted === undefined ? undefined : new OutputFolder(wanted);
  const journal = journalOf(folder, { read, files, resume: given.resume });
  const found = await choose(read, choice, { given, modules, stopping, out: wanted, journal });
  if (found.settings.most < stopping.most) console.error(outOfTime(found.settings.most));
  const command = provenanceCommand(given, stopping, found);
  const csv = runsCsv(found.outcomes);
  const source = { file: given.file, title: scenario.title, sha256 };
  const joined = joinedOf(read);
  const document = selectionJson(found, {
    ...{ version: version(), command, scenario: source, joined, modules: files },
    csvSha256: { [RUNS]: createHash('sha256').update(csv).digest('hex') },
  });
  const asJson = `${JSON.stringify(document, null, 2)}\n`;
  const { title } = scenario;
  process.stdout.write(
    given.json
      ? asJson
      : selectionText(found, { title, colour: coloured(), width: columns() }) + settledNote(read),
  );
  if (!folder) return EXIT.done;
  const provenance = { ...source, joined, modules: files, version: version(), command: typed(command) };
  const path = folder.write('selection.html', selectionPage(found, provenance));
  folder.write('selection.json', asJson);
  folder.write(RUNS, csv);
  folder.remove(UNFINISHED);
  journal?.finish();
  if (!given.json)
    process.stdout.write(`\nReport: ${path}\nBeside it: ${listed(['selection.json', RUNS])}\n`);
  return EXIT.done;
}
