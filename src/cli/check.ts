import { readScenario } from '../experiment/scenario-file.ts';
import { idealLine } from '../line/ideal.ts';
import { checkText } from '../report/check-text.ts';
import { disturbanceTexts } from '../report/disturbance-text.ts';
import { EXIT } from './exit-codes.ts';
import { columns } from './look.ts';

/** Explains a scenario without running it. */
export function checkCommand({ file, json }: { readonly file: string; readonly json: boolean }): number {
  const { scenario, sha256 } = readScenario(file);
  const ideal = idealLine(scenario);
  if (!json) {
    process.stdout.write(checkText(scenario, ideal, columns()));
    return EXIT.done;
  }
  const document = {
    format: 'mendline check 1',
    scenario: { file, title: scenario.title, sha256 },
    ideal_rate_per_h: ideal.rate * 3600,
    bottleneck: ideal.bottleneck,
    stations: ideal.stations.map(({ station, secondsPerPart, availability, rate }, i) => ({
      station,
      does: scenario.stations[i]!.does,
      to: scenario.stations[i]!.to,
      time_per_part_s: secondsPerPart,
      availability,
      rate_per_h: rate * 3600,
    })),
    disturbances: disturbanceTexts(scenario),
    policies: scenario.policies.map(({ name, responses }) => ({
      name,
      responses: responses.map((response) => response.do),
    })),
  };
  process.stdout.write(`${JSON.stringify(document, null, 2)}\n`);
  return EXIT.done;
}
