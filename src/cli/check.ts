import { readScenario } from '../experiment/scenario-file.ts';
import { idealLine } from '../line/ideal.ts';
import { checkJson } from '../report/check-json.ts';
import { checkText } from '../report/check-text.ts';
import { EXIT } from './exit-codes.ts';
import { columns } from './look.ts';

/** Explains a scenario without running it. */
export function checkCommand({ file, json }: { readonly file: string; readonly json: boolean }): number {
  const { scenario, sha256 } = readScenario(file);
  const ideal = idealLine(scenario);
  const answer = json
    ? `${JSON.stringify(checkJson({ scenario, ideal, file, sha256 }), null, 2)}\n`
    : checkText(scenario, ideal, columns());
  process.stdout.write(answer);
  return EXIT.done;
}
