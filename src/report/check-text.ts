import type { IdealLine } from '../line/ideal.ts';
import type { ResponseSpec } from '../scenario/responses.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { cut, padLeft, padRight, printable, wrap } from './columns.ts';
import { disturbanceTexts } from './disturbance-text.ts';
import { durationText } from './duration.ts';
import { fixed, percent } from './format.ts';
import { lineDrawing } from './line-drawing.ts';
import { counted } from './words.ts';

const CAUTION =
  'A planning aid: no substitute for risk assessment, local codes and competent people. Heated forming machines, robots and restarts can hurt.';

function rateText(perSecond: number): string {
  return Number.isFinite(perSecond) ? `${fixed(perSecond * 3600, 1)} /h` : 'no limit';
}

function stationTable(ideal: IdealLine): string[] {
  const head = `  ${padRight('station', 23)}${padLeft('time a part', 13)}${padLeft('available', 12)}${padLeft('alone could do', 18)}`;
  const rows = ideal.stations.map(({ station, secondsPerPart, availability, rate }) => {
    const name = padRight(cut(printable(station), 22), 23);
    const mark = station === ideal.bottleneck ? '  bottleneck' : '';
    return `  ${name}${padLeft(durationText(secondsPerPart), 13)}${padLeft(`${percent(availability)} %`, 12)}${padLeft(rateText(rate), 18)}${mark}`;
  });
  return [head, ...rows];
}

/** The response and what it acts on. */
function responseText(response: ResponseSpec): string {
  const on = 'at' in response ? response.at : response.do === 'retune' ? response.setting : response.station;
  return `${response.do} (${on})`;
}

/** A scenario explained without running it. */
export function checkText(scenario: Scenario, ideal: IdealLine, width: number): string {
  const { run, policies } = scenario;
  const listed = (items: readonly string[], none: string) =>
    items.length === 0
      ? [`  ${none}`]
      : items.flatMap((item) => wrap(`- ${printable(item)}`, width - 2, '  ').map((line) => `  ${line}`));
  const responses = policies.map(({ name, responses }) =>
    responses.length === 0 ? `${name}: no response` : `${name}: ${responses.map(responseText).join(', ')}`,
  );
  return [
    printable(scenario.title),
    ...wrap(printable(scenario.about), width),
    '',
    'The line',
    ...lineDrawing(scenario, width),
    '',
    ...stationTable(ideal),
    '',
    ...wrap(
      `Ideal rate ${rateText(ideal.rate)}, set by "${printable(ideal.bottleneck)}": from mean times and breakdowns alone, without waiting, scrap, rework or disturbances. In the long run the line stays below it.`,
      width,
    ),
    '',
    'What will disturb it',
    ...listed(disturbanceTexts(scenario), 'nothing'),
    '',
    'Policies, the first being what the others are compared with',
    ...listed(responses, ''),
    '',
    `Each policy: ${counted(run.seeds, 'run')} of ${durationText(run.length)} after ${durationText(run.warmUp)} of warm-up.`,
    ...wrap(CAUTION, width),
    '',
  ].join('\n');
}
