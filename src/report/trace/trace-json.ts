import type { PartEvent } from '../../line/trace/part-events.ts';
import type { Piece } from '../../line/trace/piece.ts';
import type { Trace, Truth } from '../../line/trace/trace.ts';
import { TRACE_FORMAT } from '../documents.ts';
import { type MadeFrom, madeFromJson } from '../made-from.ts';
import { causesIn, scrappedIn } from './run-text.ts';

export interface TraceSource {
  readonly trace: Trace;
  readonly from: MadeFrom;
}

const pieceJson = ({ stock, lot, piece }: Piece) => ({ stock, lot, piece });

/** What a document says first: what it was made from. */
export function head({ trace, from }: TraceSource, format = TRACE_FORMAT) {
  const { policy, seed, warmUp, end } = trace;
  return { ...madeFromJson(format, from), ...{ policy, seed, warm_up_s: warmUp, end_s: end } };
}

function eventJson(event: PartEvent): object {
  const { at, kind, station } = event;
  const told = { at_s: at, event: kind, station };
  switch (event.kind) {
    case 'started':
      return { ...told, from: event.from && pieceJson(event.from), cavity: event.cavity };
    case 'on-carrier':
    case 'off-carrier':
      return { ...told, carriers: event.carriers };
    case 'begins':
    case 'ends':
      return { ...told, machine: event.machine };
    case 'read':
      return { ...told, how: event.how, sent_to_be_marked: event.sent };
    case 'gauged': {
      const readings = event.readings.map(({ feature, reading, off }) => ({
        ...{ feature, reading_mm: reading, off_limits: off },
      }));
      return { ...told, readings, known: event.known, off_limits: event.off };
    }
    case 'tried':
      return { ...told, mates: event.mates.map(pieceJson), result: event.result };
    case 'aside':
      return { ...told, mates: event.mates.map(pieceJson) };
    case 'scrapped':
      return { ...told, why: event.why };
    default:
      return told;
  }
}

function truthJson(truth: Truth): object {
  const told = { at_s: truth.at, station: truth.station };
  switch (truth.kind) {
    case 'size':
      return { ...told, feature: truth.feature, size_mm: truth.size };
    case 'flaw':
      return { ...told, flaw: truth.flaw };
    case 'mark':
      return { ...told, mark_took: truth.took, mark_grade: truth.grade };
    case 'clearances':
      return { ...told, clearances_mm: truth.clearances };
  }
}

/** Which order a part went to; nothing at all where nobody orders. */
function handedJson({ demand }: Trace, number: number): object {
  if (demand === null) return {};
  const handed = demand.handed.find(({ part }) => part === number);
  return { handed_over: handed ? { at_s: handed.at, order: handed.order } : null };
}

/** The history of one part; what no policy sees only where it is asked for. */
export function partJson(source: TraceSource, number: number, withTruth: boolean): object {
  const { trace } = source;
  const { from, started, left } = trace.parts[number - 1]!;
  const of = <Of extends { readonly part: number }>(them: readonly Of[]) =>
    them.filter(({ part }) => part === number);
  return {
    ...head(source),
    ...{ part: number, parts: trace.parts.length, started_s: started },
    made_from: from && { ...pieceJson(from.piece), cavity: from.cavity },
    left: left && { at_s: left.at, as: left.as },
    ...handedJson(trace, number),
    events: of(trace.events).map(eventJson),
    ...(withTruth && { truth: of(trace.truths).map(truthJson) }),
  };
}

/** What a run came to. */
export function runJson(source: TraceSource): object {
  const { trace } = source;
  const { parts, disturbances, responses, adjustments, stocks, crews, demand } = trace;
  const scrapped = scrappedIn(trace);
  const left = (as: string) => parts.filter((part) => part.left?.as === as).length;
  return {
    ...head(source),
    parts: {
      ...{ started: parts.length, good: left('good'), scrapped: scrapped.length },
      ...{ turned_away: left('turned-away'), in_line: parts.filter((part) => part.left === null).length },
    },
    scrap_causes: Object.fromEntries(causesIn(scrapped)),
    scrapped: scrapped.map(({ at, part, station, why }) => ({ part, at_s: at, station, why })),
    disturbances: disturbances.map(({ name, begin, end, answered }) => ({
      ...{ name, begin_s: begin, end_s: end, answered_s: answered },
    })),
    responses: responses.map(({ number, does, name, began, ended }) => ({
      ...{ number, does, name, began_s: began, ended_s: ended },
    })),
    adjustments: adjustments.map(({ at, setting, how, to }) => ({ at_s: at, setting, how, to })),
    orders: stocks.flatMap(({ name, orders }) =>
      orders.map(({ number, pieces, placed, expedited, came }) => ({
        ...{ stock: name, number, pieces, placed_s: placed, expedited_s: expedited },
        ...{ came_s: came?.at ?? null, came_pieces: came?.pieces ?? null },
      })),
    ),
    ...(crews.length > 0 && {
      crew_jobs: crews.flatMap(({ name, jobs }) =>
        jobs.map(({ member, station, machine, job, called, sent, came, left }) => ({
          ...{ crew: name, member, station, machine, job },
          ...{ called_s: called, sent_s: sent, came_s: came, left_s: left },
        })),
      ),
    }),
    ...(demand && {
      demand: demand.orders.map(({ came, served }, i) => ({ order: i + 1, came_s: came, served_s: served })),
    }),
  };
}
