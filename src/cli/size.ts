import type { ScenarioFile } from '../experiment/scenario-file.ts';
import { questionOf } from '../experiment/sizing/question.ts';
import { type Sized, type SizingSettings, sized } from '../experiment/sizing/sized.ts';
import { Space } from '../experiment/sizing/space.ts';
import { typed } from '../report/origin.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { sizedCsv, sizedRunsCsv } from '../report/sized/sized-csv.ts';
import { sizedJson } from '../report/sized/sized-json.ts';
import { sizedPage } from '../report/sized/sized-page.ts';
import { sizedText } from '../report/sized/sized-text.ts';
import { listed } from '../report/words.ts';
import { suggestion } from '../scenario/nearest.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { EXIT } from './exit-codes.ts';
import { type Joining, joinedOf, joiningFolder, joiningWords } from './joining.ts';
import { journalOf } from './journal-of-command.ts';
import { coloured, columns } from './look.ts';
import { type GivenModules, type Modules, modulesOf } from './modules.ts';
import { defaultFolder, withRunner } from './runs.ts';
import { readSettled } from './settled-file.ts';
import { settledNote } from './settled-note.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';
import { secondsWithin } from './within.ts';

interface Given extends Joining, GivenModules {
  readonly file: string;
  readonly sizing?: string;
  readonly seeds?: number;
  readonly atMost?: number;
  readonly within?: string;
  readonly choices?: number;
  readonly whole: boolean;
  readonly workers?: number;
  readonly json: boolean;
  readonly resume?: boolean;
  readonly out?: string;
}

const FIRST = 10;
const AT_MOST = 20_000;
/** s. */
const WITHIN = 600;
const CHOICES = 150;
/** So few choices are all simulated without being asked for. */
const FEW = 40;
/** Beyond so many it would take too long, and too much memory. */
const MOST_WHOLE = 10_000;

const UNFINISHED = 'unfinished-sizing.csv';

function specOf({ sizings = [] }: Scenario, wanted: string | undefined) {
  const [first] = sizings;
  if (!first) {
    const remedy = 'write one under "sizings:", or join one by --with';
    throw new UsageError(`the scenario asks for no sizing; ${remedy}`);
  }
  if (wanted === undefined) return first;
  const found = sizings.find(({ name }) => name === wanted);
  const names = sizings.map(({ name }) => name);
  if (!found) throw new UsageError(`--sizing "${wanted}" is not in the scenario${suggestion(wanted, names)}`);
  return found;
}

/** Whether all choices are simulated. */
function wholeOf({ whole, atMost = AT_MOST, within }: Given, space: Space, first: number): boolean {
  const { points } = space;
  const asked = `${points} choices of ${first} runs each`;
  if (whole && points > MOST_WHOLE)
    throw new UsageError(
      `--whole would simulate ${points} choices of sizes; it takes at most ${MOST_WHOLE}. Widen the steps, or leave --whole out and let a search look at some`,
    );
  // So few runs without a time are what a report records of which the time was over before.
  if (whole && points * first > atMost && within !== 'none')
    throw new UsageError(`--whole would take ${asked}, more than the ${atMost} runs that --at-most allows`);
  return whole || (points <= FEW && points * first <= atMost);
}

/** The words of the command without what leaves the results alone. Where time ended it, so many runs do the same. */
function provenanceCommand(given: Given, { spent, runs, whole: all, possible, first }: Sized): string[] {
  const { file, sizing, seeds, atMost, choices, policyModule = [] } = given;
  const most = spent === 'time' ? runs : atMost;
  // By so few runs alone it would be a search.
  const whole = given.whole || (all && most !== undefined && most < possible * first);
  return [
    ...['size', file, ...joiningWords({ ...(given.with && { with: given.with }) })],
    ...(sizing === undefined ? [] : ['--sizing', sizing]),
    ...(seeds === undefined ? [] : ['--seeds', String(seeds)]),
    ...(choices === undefined ? [] : ['--choices', String(choices)]),
    ...(whole ? ['--whole'] : []),
    ...(most === undefined ? [] : ['--at-most', String(most)]),
    ...['--within', 'none'],
    ...policyModule.flatMap((path) => ['--policy-module', path]),
  ];
}

/** The folder of a sizing, which is another one for each of the scenario's. */
function folderOf(given: Given): string {
  const plain = given.sizing?.replace(/[^\p{L}\p{N}_-]+/gu, '-');
  return defaultFolder(
    given.file,
    given.seeds,
    `${joiningFolder(given)}-sizing${plain === undefined ? '' : `-${plain}`}`,
  );
}

/** Writes the files of the report, and returns the path of the page. */
function write(
  folder: OutputFolder,
  given: Given,
  { read, modules, found, asJson }: { read: ScenarioFile; modules: Modules; found: Sized; asJson: string },
): string {
  const { title } = read.scenario;
  const path = folder.write(
    'sizing.html',
    sizedPage(found, {
      ...{ file: given.file, title, about: read.scenario.about, sha256: read.sha256, joined: joinedOf(read) },
      ...{ version: version(), command: typed(provenanceCommand(given, found)) },
      scenarioText: read.text,
      modules: modules.files,
    }),
  );
  folder.write('sizing.json', asJson);
  folder.write('sizing.csv', sizedCsv(found));
  folder.remove(UNFINISHED);
  return path;
}

/** Looks for the least cost at which targets are met. Writes a report unless JSON alone is asked for; JSON with --out does both. */
export async function sizeCommand(given: Given): Promise<number> {
  const within = secondsWithin(given.within, WITHIN);
  const read = await readSettled(given);
  const { scenario, sha256 } = read;
  const spec = specOf(scenario, given.sizing);
  const modules = await modulesOf(given, scenario);
  const question = questionOf(
    spec,
    scenario,
    modules.policies.map(({ name }) => name),
  );
  const space = new Space(question.sizes);
  space.refuseUnfit(read.raw);
  const { seeds: first = FIRST, atMost = AT_MOST, choices: points = CHOICES } = given;
  if (first < 2) throw new UsageError('--seeds 1 tells nothing of how runs vary; a sizing takes 2 or more');
  const whole = wholeOf(given, space, first);
  const wanted = given.out ?? (given.json ? undefined : folderOf(given));
  const folder = wanted === undefined ? undefined : new OutputFolder(wanted);
  const journal = journalOf(folder, { read, files: modules.files, resume: given.resume });
  const settings: Omit<SizingSettings, 'inTime'> = { whole, first, points, atMost };
  const procedure = {
    ...{ most: atMost, words: 'a sizing', policies: 1, seeds: atMost, twins: false },
    settings: { question, ...settings },
  };
  const until = performance.now() + within * 1000;
  const found = await withRunner(
    read,
    procedure,
    { workers: given.workers, modules, out: wanted, journal },
    (runner) =>
      sized(question, { ...settings, inTime: () => performance.now() < until }, (tasks) => runner.do(tasks)),
    { name: UNFINISHED, keep: () => true, csv: sizedRunsCsv },
  );
  const source = { file: given.file, title: scenario.title, sha256 };
  const document = sizedJson({
    ...{ sized: found, version: version(), command: provenanceCommand(given, found), scenario: source },
    ...{ joined: joinedOf(read), modules: modules.files },
  });
  const asJson = `${JSON.stringify(document, null, 2)}\n`;
  process.stdout.write(
    given.json
      ? asJson
      : sizedText(found, { title: scenario.title, colour: coloured(), width: columns() }) + settledNote(read),
  );
  if (!folder) return EXIT.done;
  const path = write(folder, given, { read, modules, found, asJson });
  journal?.finish();
  if (!given.json)
    process.stdout.write(`\nReport: ${path}\nBeside it: ${listed(['sizing.json', 'sizing.csv'])}\n`);
  return EXIT.done;
}
