import type { State } from '../../line/state.ts';
import { STATES } from '../../line/state.ts';
import { CAUSES } from '../trace/event-words.ts';
import type { Playback } from './playback.ts';
import { machineName, type Run } from './run.ts';

/** What somebody who watches may want to go to. */
export const KINDS = {
  disturbance: 'disturbance begins or ends',
  response: 'response begins, acts or ends',
  stop: 'station stops',
  scrap: 'part scrapped',
  stock: 'stock runs out',
} as const;
export type Kind = keyof typeof KINDS;

/** One moment to go to. */
export interface Moment {
  /** ms since the start of the run. */
  readonly at: number;
  readonly kind: Kind;
  readonly text: string;
  readonly part?: number;
}

const STOPPED: Partial<Record<State, string>> = {
  down: 'is down',
  awaiting_technician: 'stops and waits for a technician',
  awaiting_spare: 'stops and waits for a spare',
};

function ofSpans({ spans, adjustments }: Playback): Moment[] {
  return [
    ...spans.flatMap(({ what, name, begin, end }): Moment[] => [
      { at: begin, kind: what, text: `${what} begins: ${name}` },
      ...(end === null ? [] : [{ at: end, kind: what, text: `${what} ends: ${name}` }]),
    ]),
    ...adjustments.map(({ at, text }): Moment => ({ at, kind: 'response', text })),
  ];
}

function ofStates({ playback: { stations }, states }: Run): Moment[] {
  return stations.flatMap((station, i) =>
    states[i]!.flatMap(({ at, value }, machine) => {
      const stop = (k: number) => (k < 0 ? undefined : STOPPED[STATES[value[k]!]!]);
      return Array.from(at, (time, k): Moment | null => {
        const text = stop(k);
        if (text === undefined || stop(k - 1) !== undefined) return null;
        return { at: time, kind: 'stop', text: `${machineName(station, machine)} ${text}` };
      }).filter((moment) => moment !== null);
    }),
  );
}

function ofParts(run: Run): Moment[] {
  const { parts, courses } = run.playback;
  return parts.course.flatMap((course, i) => {
    if (courses[course]!.at(-1)?.kind !== 'scrapped') return [];
    const event = run.told(i + 1).events.at(-1)!;
    if (event.kind !== 'scrapped') return [];
    const text = `part ${i + 1} is scrapped at ${event.station}: ${CAUSES[event.why]}`;
    return [{ at: Math.round(1000 * event.at), kind: 'scrap' as const, text, part: i + 1 }];
  });
}

function ofStocks({ playback: { stocks }, onHand }: Run): Moment[] {
  return stocks.flatMap(({ name }, i) => {
    const level = onHand[i];
    if (!level) return [];
    return Array.from(level.at).flatMap((at, k): Moment[] =>
      level.value[k] === 0 ? [{ at, kind: 'stock', text: `${name} has run out` }] : [],
    );
  });
}

/** All moments to go to, in the order of time. */
export function momentsOf(run: Run): Moment[] {
  return [...ofSpans(run.playback), ...ofStates(run), ...ofParts(run), ...ofStocks(run)].sort(
    (one, other) => one.at - other.at,
  );
}
