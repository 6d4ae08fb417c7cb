import type { IdealLine } from '../line/ideal.ts';
import { isBound } from '../scenario/bound.ts';
import { reMarkOf } from '../scenario/re-mark.ts';
import type { ResponseSpec } from '../scenario/responses.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { sparesOf } from '../scenario/spares.ts';
import type { WarmUpBy } from '../scenario/warm-up.ts';
import { boundText } from './bound-text.ts';
import { calendarTexts } from './calendar-text.ts';
import { chartTexts } from './chart-texts.ts';
import { cut, padLeft, padRight, printable, wrap } from './columns.ts';
import { carrierTexts, crewTexts } from './crew-text.ts';
import { demandTexts } from './demand-text.ts';
import { caseTexts, disturbanceTexts } from './disturbance-text.ts';
import { durationText } from './duration.ts';
import { fixed, percent } from './format.ts';
import { type Joined, joinedTexts } from './joined.ts';
import { lineDrawing } from './line-drawing.ts';
import { stationTexts } from './station-text.ts';
import { stockTexts } from './stock-text.ts';
import { counted } from './words.ts';

const CAUTION =
  'A planning aid: no substitute for risk assessment, local codes and competent people. Heated forming machines, robots and restarts can hurt.';

function rateText(perSecond: number): string {
  return Number.isFinite(perSecond) ? `${fixed(perSecond * 3600, 1)} /h` : 'no limit';
}

/** Columns that the station table takes at its full width. */
const FULL_TABLE = 80;

function stationTable({ stations }: Scenario, ideal: IdealLine, width: number): string[] {
  // A narrow terminal goes without the mark; the sentence below the table names the bottleneck.
  const full = width >= FULL_TABLE;
  const [first, ...others] = full ? [23, 13, 12, 18] : [width - 42, 12, 12, 16];
  const line = (name: string, ...cells: readonly string[]) =>
    `  ${padRight(name, first!)}${cells.map((cell, i) => padLeft(cell, others[i]!)).join('')}`;
  const rows = ideal.stations.map(({ station, secondsPerPart, availability, rate }, i) => {
    const { machines } = stations[i]!;
    const several = machines > 1 ? ` x${machines}` : '';
    const name = `${cut(printable(station), first! - 1 - several.length)}${several}`;
    const mark = full && station === ideal.bottleneck ? '  bottleneck' : '';
    return `${line(name, durationText(secondsPerPart), `${percent(availability)} %`, rateText(rate))}${mark}`;
  });
  return [line('station', 'time a part', 'available', 'alone could do'), ...rows];
}

/** What the ideal rate is made from, what it leaves out of this scenario, and what that makes of it. */
function idealText({ stations, crew, carriers, calendars, demand }: Scenario, ideal: IdealLine): string {
  const waiting = [
    'parts',
    'room',
    ...(crew.length > 0 ? ['crews'] : []),
    ...(stations.some((station) => sparesOf(station).length > 0) ? ['spares'] : []),
    ...(carriers.length > 0 ? ['carriers'] : []),
    ...(demand ? ['orders'] : []),
  ];
  const out = [
    `waiting (for ${waiting.join(', ')})`,
    ...(stations.some(({ warmUp }) => warmUp) ? ['warming up'] : []),
    'scrap',
    'rework',
    ...(stations.some((spec) => reMarkOf(spec)) ? ['marking anew'] : []),
  ];
  const overtime = stations.some(
    ({ calendar, shiftEnd }) => calendar !== undefined && shiftEnd === 'finishes',
  );
  const chosen = stations.some(({ to }) => to.by === 'priority' || to.by === 'state');
  return [
    `Ideal rate ${rateText(ideal.rate)}, set by "${printable(ideal.bottleneck)}": from mean times, breakdowns, ` +
      `set-ups, maintenance and calendars alone, without ${out.join(', ')} or disturbances.`,
    ...(calendars.length > 0 ? ['Calendars count by the whole week, idle hours included.'] : []),
    ...(chosen ? ['Ways chosen by priority or state count as if each got as much as it can take.'] : []),
    overtime
      ? 'What is finished after the end of a shift comes on top; what else is left out makes the line slower.'
      : 'What is left out makes the line slower.',
  ].join(' ');
}

function actsOn(response: ResponseSpec): string {
  if (response.do === 'reroute') return `${response.at} to ${response.to}`;
  if ('at' in response) return response.at;
  if ('setting' in response) return response.setting;
  if ('for' in response) return response.for;
  if ('spare' in response) return response.spare;
  if ('crew' in response) return response.crew;
  if (response.do === 'foresee') return 'all that is to come';
  return 'stock' in response ? response.stock : response.station;
}

/** The response and what it acts on. */
function responseText(response: ResponseSpec): string {
  return `${response.do} (${actsOn(response)})`;
}

const WARM_UP: Readonly<Record<WarmUpBy, (seconds: number) => string>> = {
  given: (seconds) => `after ${durationText(seconds)} of warm-up`,
  none: () => 'without a warm-up',
  pilot: () => 'after a warm-up that a pilot finds by MSER-5',
};

/** A scenario explained without running it. */
export function checkText(
  scenario: Scenario,
  ideal: IdealLine,
  width: number,
  joined: readonly Joined[] = [],
): string {
  const { run, policies } = scenario;
  const listed = (items: readonly string[], none: string) =>
    items.length === 0
      ? [`  ${none}`]
      : items.flatMap((item) => wrap(`- ${printable(item)}`, width - 2, '  ').map((line) => `  ${line}`));
  const responses = policies.map((policy) => {
    const { name, responses } = policy;
    if (isBound(policy)) return boundText(policy, scenario);
    return responses.length === 0
      ? `${name}: no response`
      : `${name}: ${responses.map(responseText).join(', ')}`;
  });
  const section = (heading: string, items: readonly string[]) =>
    items.length > 0 ? [heading, ...listed(items, ''), ''] : [];
  return [
    ...wrap(printable(scenario.title), width),
    ...wrap(printable(scenario.about), width),
    '',
    'The line',
    ...lineDrawing(scenario, width),
    '',
    ...stationTable(scenario, ideal, width),
    '',
    ...wrap(idealText(scenario, ideal), width),
    '',
    ...section('Stations, besides their cycles', stationTexts(scenario)),
    ...section('Crews', crewTexts(scenario)),
    ...section('Carriers', carrierTexts(scenario)),
    ...section('Calendars; the run begins on Monday at 00:00', calendarTexts(scenario)),
    ...section('Orders', demandTexts(scenario.demand, ideal.rate)),
    ...section('Stock, with a first estimate where theory has one', stockTexts(scenario, ideal)),
    'What will disturb it',
    ...listed(disturbanceTexts(scenario), 'nothing'),
    '',
    ...section('Cases of disturbances', caseTexts(scenario)),
    'Policies, the first being what the others are compared with',
    ...listed(responses, ''),
    '',
    ...section('Joined to the scenario', joinedTexts(joined)),
    ...section(
      'Charts, by theory: readings independent and normal, centre and sigma as given',
      chartTexts(scenario),
    ),
    ...wrap(
      `Each policy: ${counted(run.seeds, 'run')} of ${durationText(run.length)} ${WARM_UP[run.warmUpBy](run.warmUp)}.`,
      width,
    ),
    ...wrap(CAUTION, width),
    '',
  ].join('\n');
}
