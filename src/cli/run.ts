import { capabilitiesOf } from '../experiment/capabilities.ts';
import { compare, LEVEL } from '../experiment/comparison.ts';
import { spreadOf } from '../experiment/spread.ts';
import { estimatedStocks } from '../experiment/stock-estimates.ts';
import { capabilitiesJson } from '../report/capability-json.ts';
import { comparisonJson } from '../report/json.ts';
import { singleText } from '../report/terminal.ts';
import { boundOf } from '../scenario/bound.ts';
import { suggestion } from '../scenario/nearest.ts';
import { EXIT } from './exit-codes.ts';
import { type Joining, joinedOf, joiningWords } from './joining.ts';
import { coloured, columns } from './look.ts';
import { type GivenModules, modulesOf } from './modules.ts';
import { doRuns } from './runs.ts';
import { readSettled } from './settled-file.ts';
import { settledNote } from './settled-note.ts';
import { UsageError } from './usage-error.ts';
import { version } from './version.ts';

interface Given extends Joining, GivenModules {
  readonly file: string;
  readonly policy?: string;
  readonly seeds?: number;
  readonly workers?: number;
  readonly json: boolean;
}

/** The words of the command that prints the document, without what leaves the results alone, the policy always named. */
function provenanceCommand({ file, seeds, policyModule = [], ...given }: Given, policy: string): string[] {
  return [
    ...['run', file, ...joiningWords(given), '--policy', policy],
    ...(seeds === undefined ? [] : ['--seeds', String(seeds)]),
    ...policyModule.flatMap((path) => ['--policy-module', path]),
    '--json',
  ];
}

/** Runs one policy and prints its measures: the one named, else that of the first policy module, else the scenario's first. */
export async function runCommand(given: Given): Promise<number> {
  const read = await readSettled(given);
  const { scenario, sha256 } = read;
  const modules = await modulesOf(given, scenario);
  const { files, policies } = modules;
  const names = policies.map(({ name }) => name);
  const policy = policies.find(({ name }) => name === (given.policy ?? files[0]?.name ?? names[0]));
  if (!policy) {
    throw new UsageError(
      `--policy "${given.policy}" is not in the scenario${suggestion(given.policy ?? '', names)}`,
    );
  }
  const seeds = given.seeds ?? scenario.run.seeds;
  const outcomes = await doRuns(read, { policies: [policy], seeds, workers: given.workers, modules });
  const comparison = compare([policy.name], outcomes, boundOf([policy]));
  const spread = spreadOf([policy.name], outcomes);
  const capabilities = capabilitiesOf(outcomes, LEVEL);
  const estimated = estimatedStocks(scenario, [policy]);
  if (given.json) {
    const source = { file: given.file, title: scenario.title, sha256 };
    const document = comparisonJson({
      comparison,
      outcomes,
      spread,
      version: version(),
      command: provenanceCommand(given, policy.name),
      scenario: source,
      joined: joinedOf(read),
      estimated,
      modules: files,
    });
    process.stdout.write(
      `${JSON.stringify({ ...document, capabilities: capabilitiesJson(capabilities) }, null, 2)}\n`,
    );
  } else {
    process.stdout.write(
      singleText(
        comparison,
        { title: scenario.title, colour: coloured(), width: columns() },
        capabilities,
        estimated,
        spread,
      ) + settledNote(read),
    );
  }
  return EXIT.done;
}
