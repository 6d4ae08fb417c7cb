import type { BreakdownSpec } from '../scenario/breakdowns.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StationSpec } from '../scenario/stations.ts';
import type { TaskSpec } from '../scenario/tasks.ts';
import { durationText } from './duration.ts';
import { percent } from './format.ts';
import { formedToleranceTexts } from './formed-tolerance-text.ts';
import { formingTexts } from './forming-text.ts';
import { gaugeTexts } from './gauge-text.ts';
import { lawText } from './law-text.ts';
import { counted } from './words.ts';

const WHILE_DOWN = {
  unloads: undefined,
  nothing: 'while down it does not even pass on what is finished',
  'loads-and-unloads': 'while down it still takes and passes on parts',
} as const satisfies Record<StationSpec['whileDown'], string | undefined>;

const SHIFT_END = {
  finishes: undefined,
  resumes: 'the end of a shift interrupts a cycle, which resumes with the next',
  restarts: 'the end of a shift interrupts a cycle, which starts anew with the next',
  scraps: 'the end of a shift interrupts a cycle and scraps its part',
} as const satisfies Record<StationSpec['shiftEnd'], string | undefined>;

function handlingText({ handling }: StationSpec): string | undefined {
  if (!handling) return undefined;
  const { load, unload, by } = handling;
  const parts = [
    ...(load > 0 ? [`loaded in ${durationText(load)}`] : []),
    ...(unload > 0 ? [`unloaded in ${durationText(unload)}`] : []),
  ];
  return `${parts.join(' and ')} by ${by === undefined ? 'itself' : `"${by}"`}`;
}

function taskText(kind: string, { name, cycles, every, counted: by, takes, crew, spare }: TaskSpec): string {
  const after =
    cycles === undefined
      ? `after ${lawText(every!)} ${by === 'working' ? 'of work' : 'by the clock'}`
      : `after ${counted(cycles, 'cycle')}`;
  const piece = spare === undefined ? '' : ` and one "${spare}"`;
  return `${kind} "${name}" ${after}, takes ${lawText(takes)}${piece}${crew === undefined ? '' : ` by "${crew}"`}`;
}

function spareText({ name, spare }: BreakdownSpec): string | undefined {
  return spare === undefined ? undefined : `to repair "${name}" takes one "${spare}"`;
}

function warmUpText({ warmUp }: StationSpec): string | undefined {
  if (!warmUp) return undefined;
  return `warms up in ${lawText(warmUp.takes)} when it has not worked for more than ${durationText(warmUp.after)}`;
}

/** Times in words, for numbers that are mostly small. */
const times = (number: number): string => (number === 1 ? 'once' : `${number} times`);

function readerText(spec: StationSpec): string | undefined {
  if (!('reader' in spec) || !spec.reader) return undefined;
  const { tries, retry, unread } = spec.reader;
  const { reMark, scraps } = unread;
  const told = [
    ...(tries > 1
      ? [`tries up to ${times(tries)} to read a mark, ${durationText(retry)} a further time`]
      : []),
    ...(reMark
      ? [
          `sends a part that is not read to "${reMark.station}" to be marked anew, ${times(reMark.limit)} at most; ` +
            `then it ${scraps ? 'is scrapped' : 'passes on anonymously'}`,
        ]
      : []),
  ];
  return told.length > 0 ? told.join('; ') : undefined;
}

function shiftEndText({ does, calendar, shiftEnd }: StationSpec): string | undefined {
  if (calendar === undefined) return undefined;
  return does === 'arrive'
    ? 'the time between arrivals runs in its working hours alone'
    : SHIFT_END[shiftEnd];
}

/** What a station does besides its cycles, and where it departs from what is usual; nothing where there is no such thing. */
export function stationTexts(scenario: Scenario): string[] {
  return scenario.stations.flatMap((spec) => {
    const told = [
      spec.speed < 1 ? `works at ${percent(spec.speed)} % of its speed` : undefined,
      ...(spec.does === 'gauge' ? gaugeTexts(spec, scenario) : []),
      handlingText(spec),
      ...spec.setUps.map((task) => taskText('set-up', task)),
      ...spec.maintenance.map((task) => taskText('maintenance', task)),
      ...spec.breakdowns.map(spareText),
      warmUpText(spec),
      readerText(spec),
      WHILE_DOWN[spec.whileDown],
      shiftEndText(spec),
      ...formingTexts(spec, scenario),
      ...formedToleranceTexts(spec.name, scenario),
    ].filter((text) => text !== undefined);
    return told.length > 0 ? [`"${spec.name}": ${told.join('; ')}`] : [];
  });
}
