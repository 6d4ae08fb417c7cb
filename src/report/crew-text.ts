import type { CrewSpec } from '../scenario/crew.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StationSpec } from '../scenario/stations.ts';
import { durationText } from './duration.ts';
import { listed } from './words.ts';

const RULES = {
  'first-come': 'first come, first served',
  priority: 'served by priority, 1 first',
  nearest: 'the nearest call first',
} as const satisfies Record<CrewSpec['serves'], string>;

/** `repairs "forming" (jam, leak) and "trimming" (jam)`; empty where there is nothing to do. */
function duty(
  does: string,
  stations: readonly StationSpec[],
  calls: (station: StationSpec) => readonly string[] | undefined,
): string[] {
  const served = stations.flatMap((station) => {
    const names = calls(station);
    if (names === undefined) return [];
    return names.length > 0 ? [`"${station.name}" (${names.join(', ')})`] : [`"${station.name}"`];
  });
  return served.length > 0 ? [`${does} ${listed(served)}`] : [];
}

function movesText({ move, moves }: CrewSpec): string[] {
  const exceptions = moves.map(
    ({ between: [a, b], takes }) => `${durationText(takes)} between "${a}" and "${b}"`,
  );
  if (move === 0 && exceptions.length === 0) return [];
  return [[`moves from station to station in ${durationText(move)}`, ...exceptions].join(', ')];
}

interface Call {
  readonly name: string;
  readonly crew?: string | undefined;
  readonly priority: number;
}

/** What a crew does by name at a station, with the priority where that decides; undefined where it does nothing. */
function called({ name: crew, serves }: CrewSpec, tasks: readonly Call[]) {
  const names = tasks
    .filter((task) => task.crew === crew)
    .map(({ name, priority }) => (serves === 'priority' ? `${name}: priority ${priority}` : name));
  return names.length > 0 ? names : undefined;
}

/** Each crew: how many, whom they serve first, how they move, when they are there, and what they do where. */
export function crewTexts({ crew, stations }: Scenario): string[] {
  return crew.map((spec) => {
    const duties = [
      ...duty('repairs', stations, ({ breakdowns }) => called(spec, breakdowns)),
      ...duty('sets up', stations, ({ setUps }) => called(spec, setUps)),
      ...duty('maintains', stations, ({ maintenance }) => called(spec, maintenance)),
      ...duty('loads and unloads', stations, ({ handling }) => {
        if (handling?.by !== spec.name) return undefined;
        return spec.serves === 'priority' ? [`priority ${handling.priority}`] : [];
      }),
    ];
    return [
      `"${spec.name}" (${spec.number}): ${RULES[spec.serves]}`,
      ...movesText(spec),
      ...(spec.calendar === undefined ? [] : [`there by the calendar "${spec.calendar}"`]),
      ...(duties.length > 0 ? duties : ['nothing calls for them']),
    ].join('; ');
  });
}

/** Each kind of carrier with its way. */
export function carrierTexts({ carriers }: Scenario): string[] {
  return carriers.map(({ name, number, from, to, return: returns }) => {
    const until = to === undefined ? 'until it leaves the line' : `until it leaves "${to}"`;
    const back = returns > 0 ? `, back after ${durationText(returns)}` : ', back at once';
    return `"${name}" (${number}): one a part from its loading at "${from}" ${until}${back}`;
  });
}
