import { readScenario } from '../experiment/scenario-file.ts';
import { idealLine } from '../line/ideal.ts';
import { checkJson } from '../report/check-json.ts';
import { checkText } from '../report/check-text.ts';
import { EXIT } from './exit-codes.ts';
import { type Joining, joinedOf } from './joining.ts';
import { columns } from './look.ts';

interface Given extends Joining {
  readonly file: string;
  readonly json: boolean;
}

/** Explains a scenario without running it. */
export function checkCommand({ file, json, with: supplements }: Given): number {
  const read = readScenario(file, supplements);
  const { scenario, sha256 } = read;
  const joined = joinedOf(read);
  const ideal = idealLine(scenario);
  const answer = json
    ? `${JSON.stringify(checkJson({ scenario, ideal, file, sha256, joined }), null, 2)}\n`
    : checkText(scenario, ideal, columns(), joined);
  process.stdout.write(answer);
  return EXIT.done;
}
