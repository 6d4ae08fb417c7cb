import { compare } from '../experiment/comparison.ts';
import { recoveredOf } from '../experiment/recovered.ts';
import { readScenario } from '../experiment/scenario-file.ts';
import { estimatedStocks } from '../experiment/stock-estimates.ts';
import { compareTwins } from '../experiment/twins.ts';
import { runsCsv } from '../report/csv.ts';
import { comparisonJson } from '../report/json.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { comparisonPage } from '../report/page.ts';
import { comparisonText } from '../report/terminal.ts';
import { twinsCsv } from '../report/twins-csv.ts';
import { listed } from '../report/words.ts';
import { boundLast, boundOf } from '../scenario/bound.ts';
import { EXIT } from './exit-codes.ts';
import { chosenPolicies, type Joining, joinedOf, joiningFolder, joiningWords } from './joining.ts';
import { journalOf } from './journal-of-command.ts';
import { coloured, columns } from './look.ts';
import { type GivenModules, modulesOf } from './modules.ts';
import { defaultFolder, doRuns, doTwins, UNFINISHED } from './runs.ts';
import { version } from './version.ts';

const TWINS = 'twins.csv';

interface Given extends Joining, GivenModules {
  readonly file: string;
  readonly seeds?: number;
  readonly workers?: number;
  readonly json: boolean;
  readonly noTwins?: boolean;
  readonly resume?: boolean;
  readonly out?: string;
}

/** The command without what leaves the results alone, so that the report is the same on any machine. */
function provenanceCommand(given: Given): string {
  const { file, seeds, noTwins, policyModule = [] } = given;
  return [
    ...['mendline', 'compare', file, ...joiningWords(given)],
    ...(seeds === undefined ? [] : ['--seeds', String(seeds)]),
    ...(noTwins ? ['--no-twins'] : []),
    ...policyModule.flatMap((path) => ['--policy-module', path]),
  ].join(' ');
}

/** Compares all policies, or those chosen, where anything disturbs the line with their twins, too. Writes a report unless JSON alone is asked for; JSON with --out does both. */
export async function compareCommand(given: Given): Promise<number> {
  const read = readScenario(given.file, given.with);
  const { scenario, sha256, text } = read;
  const modules = await modulesOf(given, scenario);
  const { files } = modules;
  const chosen = chosenPolicies(modules, given);
  const joined = joinedOf(read);
  const wanted =
    given.out ?? (given.json ? undefined : defaultFolder(given.file, given.seeds, joiningFolder(given)));
  const folder = wanted === undefined ? undefined : new OutputFolder(wanted);
  const seeds = given.seeds ?? scenario.run.seeds;
  const journal = journalOf(folder, { read, files, resume: given.resume });
  const ordered = boundLast(chosen);
  const bound = boundOf(ordered);
  const options = { policies: ordered, seeds, workers: given.workers, modules, out: wanted, journal };
  const policies = ordered.map((policy) => policy.name);
  const twinned = scenario.disturbances.length > 0 && !given.noTwins;
  const pairs = twinned ? await doTwins(read, options) : [];
  const outcomes = twinned ? pairs.map(({ run }) => run) : await doRuns(read, options);
  const comparison = compare(policies, outcomes, bound);
  const recovered = bound === null ? undefined : recoveredOf(policies, outcomes, bound);
  const twins = twinned ? compareTwins(policies, pairs, scenario.run) : undefined;
  const estimated = estimatedStocks(scenario, chosen);
  const document = comparisonJson({
    comparison,
    outcomes,
    twins,
    recovered,
    version: version(),
    scenario: { file: given.file, title: scenario.title, sha256 },
    joined,
    modules: files,
    estimated,
  });
  const asJson = `${JSON.stringify(document, null, 2)}\n`;
  if (given.json) process.stdout.write(asJson);
  else
    process.stdout.write(
      comparisonText(
        comparison,
        { title: scenario.title, colour: coloured(), width: columns() },
        twins,
        recovered,
      ),
    );
  if (!folder) return EXIT.done;
  const page = comparisonPage({
    comparison,
    twins,
    recovered,
    estimated,
    title: scenario.title,
    about: scenario.about,
    scenarioText: text,
    joined,
    provenance: {
      file: given.file,
      sha256,
      modules: files,
      version: version(),
      command: provenanceCommand(given),
      seeds: seeds === 1 ? '1' : `1 to ${seeds}`,
    },
  });
  const path = folder.write('comparison.html', page);
  folder.write('comparison.json', asJson);
  folder.write('runs.csv', runsCsv(outcomes));
  if (twins) folder.write(TWINS, twinsCsv(twins));
  else folder.remove(TWINS);
  folder.remove(UNFINISHED);
  journal?.finish();
  const beside = listed(['comparison.json', 'runs.csv', ...(twins ? [TWINS] : [])]);
  if (!given.json) process.stdout.write(`\nReport: ${path}\nBeside it: ${beside}\n`);
  return EXIT.done;
}
