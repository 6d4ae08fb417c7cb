import { crossed } from '../experiment/crossed.ts';
import { caseNames } from '../experiment/plan-crossed.ts';
import { crossedCsv } from '../report/crossed/crossed-csv.ts';
import { crossedJson } from '../report/crossed/crossed-json.ts';
import { crossedPage } from '../report/crossed/crossed-page.ts';
import { crossedText } from '../report/crossed/crossed-text.ts';
import { typed } from '../report/origin.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { listed } from '../report/words.ts';
import { isBound } from '../scenario/bound.ts';
import { suggestion } from '../scenario/nearest.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { EXIT } from './exit-codes.ts';
import { chosenPolicies, type Joining, joinedOf, joiningFolder, joiningWords } from './joining.ts';
import { journalOf } from './journal-of-command.ts';
import { coloured, columns } from './look.ts';
import { measureNamed } from './measure-named.ts';
import { type GivenModules, modulesOf } from './modules.ts';
import { defaultFolder, doCrossed, UNFINISHED_CROSSED } from './runs.ts';
import { readSettled } from './settled-file.ts';
import { settledNote } from './settled-note.ts';
import { severitiesOf } from './severities.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

interface Given extends Joining, GivenModules {
  readonly file: string;
  readonly severity?: string;
  readonly case?: readonly string[];
  readonly by?: string;
  readonly seeds?: number;
  readonly workers?: number;
  readonly json: boolean;
  readonly resume?: boolean;
  readonly out?: string;
}

/** The cases that `--case` names, else all. */
function chosenCases(scenario: Scenario, chosen: Given['case'] = []): string[] {
  if (scenario.disturbances.length === 0) {
    const remedy = 'write some under "disturbances:", or compare the policies by "mendline compare"';
    throw new UsageError(`nothing disturbs this line, so there is nothing to cross; ${remedy}`);
  }
  const known = caseNames(scenario);
  chosen.forEach((name, i) => {
    if (!known.includes(name)) throw new UsageError(`--case "${name}" is not in the scenario${suggestion(name, known)}`); // biome-ignore format: one line reads better
    if (chosen.indexOf(name) !== i) throw new UsageError(`--case "${name}" is given twice; once is enough`);
  });
  return chosen.length > 0 ? [...chosen] : known;
}

/** The words of the command without what leaves the results alone, so that the report is the same on any machine. */
function provenanceCommand(given: Given): string[] {
  const { file, severity, case: cases = [], by, seeds, policyModule = [] } = given;
  return [
    ...['cross', file, ...joiningWords(given)],
    ...(severity === undefined ? [] : ['--severity', severity]),
    ...cases.flatMap((name) => ['--case', name]),
    ...(by === undefined ? [] : ['--by', by]),
    ...(seeds === undefined ? [] : ['--seeds', String(seeds)]),
    ...policyModule.flatMap((path) => ['--policy-module', path]),
  ];
}

/** Crosses cases, severities and policies. Writes a report unless JSON alone is asked for; JSON with --out does both. */
export async function crossCommand(given: Given): Promise<number> {
  const severities = severitiesOf(given.severity);
  const by = measureNamed(given.by ?? 'throughput', '--by').key;
  const read = await readSettled(given);
  const { scenario, sha256 } = read;
  const cases = chosenCases(scenario, given.case);
  const modules = await modulesOf(given, scenario);
  const { files } = modules;
  // A bound would be the best everywhere.
  const chosen = chosenPolicies(modules, given).filter((policy) => !isBound(policy));
  const joined = joinedOf(read);
  const policies = chosen.map(({ name }) => name);
  if (policies.length < 2) {
    const remedy = 'name another by --only, write one under "policies:" or join one by --with';
    throw new UsageError(`"${policies[0]}" is the only policy, so none can be the best; ${remedy}`);
  }
  const wanted =
    given.out ?? (given.json ? undefined : defaultFolder(given.file, given.seeds, joiningFolder(given)));
  const folder = wanted === undefined ? undefined : new OutputFolder(wanted);
  const seeds = given.seeds ?? scenario.run.seeds;
  const journal = journalOf(folder, { read, files, resume: given.resume });
  const options = { policies: chosen, seeds, workers: given.workers, modules, out: wanted, journal };
  const crossing = { cases, severities, policies };
  const runs = await doCrossed(read, crossing, options);
  const found = crossed(crossing, runs, by);
  const command = provenanceCommand(given);
  const source = { file: given.file, title: scenario.title, sha256 };
  const document = crossedJson({
    crossed: found,
    runs,
    version: version(),
    command,
    scenario: source,
    joined,
    modules: files,
  });
  const asJson = `${JSON.stringify(document, null, 2)}\n`;
  const { title } = scenario;
  process.stdout.write(
    given.json
      ? asJson
      : crossedText(found, { title, colour: coloured(), width: columns() }) + settledNote(read),
  );
  if (!folder) return EXIT.done;
  const provenance = {
    ...source,
    joined,
    modules: files,
    version: version(),
    command: typed(command),
  };
  const path = folder.write('cross.html', crossedPage(found, provenance));
  folder.write('cross.json', asJson);
  folder.write('cross.csv', crossedCsv(runs));
  folder.remove(UNFINISHED_CROSSED);
  journal?.finish();
  if (!given.json)
    process.stdout.write(`\nReport: ${path}\nBeside it: ${listed(['cross.json', 'cross.csv'])}\n`);
  return EXIT.done;
}
