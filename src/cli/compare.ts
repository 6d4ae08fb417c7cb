import { compare } from '../experiment/comparison.ts';
import { readScenario } from '../experiment/scenario-file.ts';
import { runsCsv } from '../report/csv.ts';
import { comparisonJson } from '../report/json.ts';
import { OutputFolder } from '../report/output-folder.ts';
import { comparisonPage } from '../report/page.ts';
import { comparisonText } from '../report/terminal.ts';
import { EXIT } from './exit-codes.ts';
import { coloured, columns } from './look.ts';
import { defaultFolder, doRuns, UNFINISHED } from './runs.ts';
import { version } from './version.ts';

interface Given {
  readonly file: string;
  readonly seeds?: number;
  readonly workers?: number;
  readonly json: boolean;
  readonly out?: string;
}

/** The command without what leaves the results alone, so that the report is the same on any machine. */
function provenanceCommand({ file, seeds }: Given): string {
  return ['mendline', 'compare', file, ...(seeds === undefined ? [] : ['--seeds', String(seeds)])].join(' ');
}

/** Compares all policies. Writes a report unless JSON alone is asked for; JSON with --out does both. */
export async function compareCommand(given: Given): Promise<number> {
  const read = readScenario(given.file);
  const { scenario, sha256, text } = read;
  const wanted = given.out ?? (given.json ? undefined : defaultFolder(given.file, given.seeds));
  const folder = wanted === undefined ? undefined : new OutputFolder(wanted);
  const seeds = given.seeds ?? scenario.run.seeds;
  const outcomes = await doRuns(read, {
    policies: scenario.policies,
    seeds,
    workers: given.workers,
    out: wanted,
  });
  const comparison = compare(
    scenario.policies.map((policy) => policy.name),
    outcomes,
  );
  const document = comparisonJson({
    comparison,
    outcomes,
    version: version(),
    scenario: { file: given.file, title: scenario.title, sha256 },
  });
  const asJson = `${JSON.stringify(document, null, 2)}\n`;
  if (given.json) process.stdout.write(asJson);
  else
    process.stdout.write(
      comparisonText(comparison, { title: scenario.title, colour: coloured(), width: columns() }),
    );
  if (!folder) return EXIT.done;
  const page = comparisonPage({
    comparison,
    title: scenario.title,
    about: scenario.about,
    scenarioText: text,
    provenance: {
      file: given.file,
      sha256,
      version: version(),
      command: provenanceCommand(given),
      seeds: seeds === 1 ? '1' : `1 to ${seeds}`,
    },
  });
  const path = folder.write('comparison.html', page);
  folder.write('comparison.json', asJson);
  folder.write('runs.csv', runsCsv(outcomes));
  folder.remove(UNFINISHED);
  if (!given.json) process.stdout.write(`\nReport: ${path}\nBeside it: comparison.json and runs.csv\n`);
  return EXIT.done;
}
