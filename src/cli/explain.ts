import { explain } from '../experiment/explanation.ts';
import { explainJson } from '../report/explain-json.ts';
import { explainText } from '../report/explain-text.ts';
import { EXIT } from './exit-codes.ts';
import { breakable } from './interrupt.ts';
import { columns } from './look.ts';
import { readSettled } from './settled-file.ts';

/** Runs behind the simulated values where no other number is given. */
const SEEDS = 10;

interface Given {
  readonly file: string;
  readonly seeds?: number;
  readonly json: boolean;
}

/** Shows what the dimensions of a scenario come to, predicted and simulated. */
export async function explainCommand({ file, seeds = SEEDS, json }: Given): Promise<number> {
  const { scenario, sha256 } = await readSettled({ file });
  const explanation = await breakable(() => explain(scenario, seeds));
  const { title } = scenario;
  const answer = json
    ? `${JSON.stringify(explainJson({ explanation, file, title, sha256 }), null, 2)}\n`
    : explainText(explanation, scenario, columns());
  process.stdout.write(answer);
  return EXIT.done;
}
