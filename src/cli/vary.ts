import type { ScenarioFile } from '../experiment/scenario-file.ts';
import { boundIn, type Design, designOf } from '../experiment/varied/design.ts';
import type { Factor } from '../experiment/varied/factor.ts';
import { changesAt } from '../experiment/varied/plan-varied.ts';
import { varied } from '../experiment/varied/varied.ts';
import { typed } from '../report/origin.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { variedCsv } from '../report/varied/varied-csv.ts';
import { variedJson } from '../report/varied/varied-json.ts';
import { variedPage } from '../report/varied/varied-page.ts';
import { variedText } from '../report/varied/varied-text.ts';
import { listed } from '../report/words.ts';
import { suggestion } from '../scenario/nearest.ts';
import { parseChanged } from '../scenario/parse.ts';
import type { PolicySpec } from '../scenario/scenario.ts';
import { designOptions } from './design-options.ts';
import { EXIT } from './exit-codes.ts';
import { joinedOf, joiningFolder, joiningWords } from './joining.ts';
import { journalOf } from './journal-of-command.ts';
import { coloured, columns } from './look.ts';
import { measureNamed } from './measure-named.ts';
import { type GivenModules, type Modules, modulesOf } from './modules.ts';
import { factorsOf } from './over.ts';
import { defaultFolder, doVaried, UNFINISHED_VARIED } from './runs.ts';
import { readSettled } from './settled-file.ts';
import { settledNote } from './settled-note.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

interface Given extends GivenModules {
  readonly file: string;
  readonly with?: readonly string[];
  readonly over?: readonly string[];
  readonly design?: string;
  readonly points?: number;
  readonly paths?: number;
  readonly policy?: readonly string[];
  readonly by?: string;
  readonly seeds?: number;
  readonly workers?: number;
  readonly json: boolean;
  readonly resume?: boolean;
  readonly out?: string;
}

/** The words of the command without what leaves the results alone, so that the report is the same on any machine. */
function provenanceCommand(given: Given): string[] {
  const { file, over = [], policy = [], policyModule = [] } = given;
  const option = (name: string, value: string | number | undefined) =>
    value === undefined ? [] : [`--${name}`, String(value)];
  return [
    ...['vary', file, ...joiningWords(given)],
    ...over.flatMap((text) => ['--over', text]),
    ...option('design', given.design),
    ...option('points', given.points),
    ...option('paths', given.paths),
    ...policy.flatMap((name) => ['--policy', name]),
    ...option('by', given.by),
    ...option('seeds', given.seeds),
    ...policyModule.flatMap((path) => ['--policy-module', path]),
  ];
}

/** The policies named, else that of the first policy module, else the scenario's first. */
function chosenPolicies({ policies, files }: Modules, named: readonly string[] = []): readonly PolicySpec[] {
  const names = policies.map(({ name }) => name);
  for (const [i, name] of named.entries()) {
    if (!names.includes(name))
      throw new UsageError(`--policy "${name}" is not in the scenario${suggestion(name, names)}`);
    if (named.indexOf(name) !== i) throw new UsageError(`--policy "${name}" is given twice; once is enough`);
  }
  const wanted = named.length > 0 ? named : [files[0]?.name ?? names[0]!];
  return wanted.map((name) => policies.find((policy) => policy.name === name)!);
}

/** Several policies are varied as values of the scenario are. */
const withPolicies = (factors: readonly Factor[], policies: readonly PolicySpec[]): Factor[] => [
  ...factors,
  ...(policies.length > 1
    ? [
        {
          at: null,
          name: 'policy',
          levels: policies.map(({ name }) => ({ words: name, is: name })),
          range: null,
        },
      ]
    : []),
];

/** Beyond so many points their scenarios are not made before the runs; one that is none then ends the runs, which says so. */
const MOST_CHECKED = 1000;

/**
 * Refuses points whose scenario is none before anything is run, and values that say the same.
 * @throws ChangeError, UsageError
 */
function checkPoints({ raw }: ScenarioFile, factors: readonly Factor[], design: Design): void {
  const { points } = design;
  const bound = boundIn(design);
  if (bound >= 0)
    throw new UsageError(
      `at the ${points.length} points drawn, ${factors[bound]!.name} goes with the others, so that what it does cannot be told; take more --points, or a range of more values`,
    );
  for (const [i, { at, levels, range }] of factors.entries()) {
    if (at === null) continue;
    const made = levels.map((level) => {
      const point = points[0]!.with(i, level);
      const scenario = parseChanged(raw, changesAt(factors, point));
      if (scenario.run.warmUpBy === 'pilot')
        throw new UsageError(
          `--over "${at}": a warm-up that is varied is a time or none; a pilot finds one for all`,
        );
      return JSON.stringify(scenario);
    });
    const twice = made.findIndex((text, k) => made.indexOf(text) !== k);
    if (twice >= 0 && range === null) {
      const same = levels[made.indexOf(made[twice]!)]!.words;
      throw new UsageError(`--over "${at}": ${same} and ${levels[twice]!.words} are the same to the line`);
    }
  }
  for (const point of points.slice(0, MOST_CHECKED)) parseChanged(raw, changesAt(factors, point));
}

/** Varies values of the scenario and says what they do. Writes a report unless JSON alone is asked for; JSON with --out does both. */
export async function varyCommand(given: Given): Promise<number> {
  const command = provenanceCommand(given);
  const by = measureNamed(given.by ?? 'throughput', '--by').key;
  const places = factorsOf(given.over);
  const read = await readSettled(given);
  const { scenario, sha256 } = read;
  const modules = await modulesOf(given, scenario);
  const policies = chosenPolicies(modules, given.policy);
  const factors = withPolicies(places, policies);
  const seeds = given.seeds ?? scenario.run.seeds;
  const { kind, count } = designOptions(factors, given, seeds);
  const design = designOf(kind, factors, count);
  checkPoints(read, factors, design);
  const joining = `${joiningFolder(given)}-vary`;
  const wanted = given.out ?? (given.json ? undefined : defaultFolder(given.file, given.seeds, joining));
  const folder = wanted === undefined ? undefined : new OutputFolder(wanted);
  const journal = journalOf(folder, { read, files: modules.files, resume: given.resume });
  const [{ name: policy }] = policies as [PolicySpec];
  const options = { policies, seeds, workers: given.workers, modules, out: wanted, journal };
  const runs = await doVaried(read, { factors, design, policy }, options);
  const found = varied({ factors, design, policy: policies.length > 1 ? null : policy, key: by }, runs);
  const { title } = scenario;
  const source = { file: given.file, title, sha256 };
  const joined = joinedOf(read);
  const made = { joined, modules: modules.files, version: version() };
  const document = variedJson({ varied: found, runs, command, scenario: source, ...made });
  const asJson = `${JSON.stringify(document, null, 2)}\n`;
  process.stdout.write(
    given.json
      ? asJson
      : variedText(found, { title, colour: coloured(), width: columns() }) + settledNote(read),
  );
  if (!folder) return EXIT.done;
  const path = folder.write('vary.html', variedPage(found, { ...source, ...made, command: typed(command) }));
  folder.write('vary.json', asJson);
  folder.write('vary.csv', variedCsv(factors, design, runs));
  folder.remove(UNFINISHED_VARIED);
  journal?.finish();
  if (!given.json)
    process.stdout.write(`\nReport: ${path}\nBeside it: ${listed(['vary.json', 'vary.csv'])}\n`);
  return EXIT.done;
}
