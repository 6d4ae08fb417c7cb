import type { PartEvent } from '../../line/trace/part-events.ts';
import type { Piece } from '../../line/trace/piece.ts';
import type { Trace, Truth } from '../../line/trace/trace.ts';

/** A number that need not be whole, be it so or not: whose kind no name and no digit could tell. */
export class Real {
  readonly value: number;

  constructor(value: number) {
    this.value = value;
  }

  toJSON(): number {
    return this.value;
  }
}

/** What is said of an event; a bare number is a whole one. */
export type Value = string | number | boolean | Real;
export type Kind = 'integer' | 'float' | 'string' | 'boolean';

/** One event of a log: to what it happened, and what is to be said of it, by the names of columns. */
export interface LogRow {
  /** s since the start of the run. */
  readonly at: number;
  readonly event: string;
  readonly part?: number;
  readonly station?: string;
  readonly machine?: string;
  readonly stock?: string;
  readonly lot?: number;
  /** What the part was started from, or tried with. */
  readonly pieces?: readonly Piece[];
  readonly disturbance?: string;
  readonly response?: string;
  readonly values: Readonly<Record<string, Value>>;
}

const pieceValues = (pieces: readonly Piece[], role: string) =>
  Object.fromEntries(
    pieces.flatMap(({ stock, lot, piece }) => [
      [`${role}_lot_${stock}`, lot],
      [`${role}_piece_${stock}`, piece],
    ]),
  );

/** What an event says besides where and of which part it is. */
function valuesOf(event: PartEvent): LogRow['values'] {
  switch (event.kind) {
    case 'started':
      return event.from === null
        ? {}
        : { ...pieceValues([event.from], 'from'), ...(event.cavity && { cavity: event.cavity }) };
    case 'read':
      return { read: event.how, sent_to_be_marked: event.sent };
    case 'gauged':
      return {
        ...{ known: event.known, off_limits: event.off },
        ...Object.fromEntries(
          event.readings.map(({ feature, reading }) => [`reading_${feature}_mm`, new Real(reading)]),
        ),
      };
    case 'tried':
      return { result: event.result, ...pieceValues(event.mates, 'mate') };
    case 'aside':
      return pieceValues(event.mates, 'mate');
    case 'scrapped':
      return { why: event.why };
    case 'on-carrier':
    case 'off-carrier':
      return { carriers: event.carriers };
    default:
      return {};
  }
}

function partRow(event: PartEvent): LogRow {
  const { at, kind, part, station } = event;
  const pieces =
    event.kind === 'started' ? event.from && [event.from] : 'mates' in event ? event.mates : null;
  return {
    ...{ at, event: kind, part, station },
    ...('machine' in event && { machine: event.machine }),
    ...(pieces && { pieces }),
    values: valuesOf(event),
  };
}

function truthValues(truth: Truth): LogRow['values'] {
  switch (truth.kind) {
    case 'size':
      return { [`true_${truth.feature}_mm`]: new Real(truth.size) };
    case 'flaw':
      return { true_flaw: truth.flaw };
    case 'mark':
      return { true_mark_took: truth.took, ...(truth.grade && { true_mark_grade: truth.grade }) };
    case 'clearances':
      return Object.fromEntries(truth.clearances.map((mm, i) => [`clearance_${i + 1}_mm`, new Real(mm)]));
  }
}

/** From and to, where it has ended, as two rows. */
const spanned = (row: LogRow, end: number | null): LogRow[] => [
  { ...row, event: `${row.event} begins` },
  ...(end === null ? [] : [{ ...row, at: end, event: `${row.event} ends` }]),
];

function stateRows({ stations }: Trace): LogRow[] {
  return stations.flatMap(({ name, machines }) =>
    machines.flatMap(({ name: machine, states: { at, value } }) =>
      at.map(
        (time, i): LogRow => ({
          ...{ at: time, event: 'state', station: name, machine, values: { state: value[i]! } },
        }),
      ),
    ),
  );
}

function orderRows({ stocks }: Trace): LogRow[] {
  return stocks.flatMap(({ name: stock, orders }) =>
    orders.flatMap(({ number: lot, pieces, placed, expedited, came }): LogRow[] => [
      { at: placed, event: 'ordered', stock, lot, values: { amount: pieces } },
      ...(expedited === null ? [] : [{ at: expedited, event: 'expedited', stock, lot, values: {} }]),
      ...(came === null
        ? []
        : [{ at: came.at, event: 'delivered', stock, lot, values: { amount: came.pieces } }]),
    ]),
  );
}

/** Each job of a crew as up to three rows: somebody is sent, comes and is done. */
const crewRows = ({ crews, end }: Trace): LogRow[] =>
  crews.flatMap(({ name: crew, jobs }) =>
    jobs.flatMap(({ member, station, machine, job, sent, came, left }): LogRow[] => {
      const row = { station, machine, values: { crew, member, job } };
      return [
        { ...row, at: sent, event: 'crew sent' },
        ...(came > end ? [] : [{ ...row, at: came, event: 'crew comes' }]),
        ...(left === null ? [] : [{ ...row, at: left, event: 'crew done' }]),
      ];
    }),
  );

/** Orders for good assemblies as they come and are served, and which parts they are served with. */
function demandRows({ demand }: Trace): LogRow[] {
  if (demand === null) return [];
  return [
    ...demand.orders.map(({ came }, i): LogRow => {
      return { at: came, event: 'order comes', values: { order: i + 1 } };
    }),
    ...demand.handed.map(({ part, order, at }): LogRow => {
      return { at, event: 'handed over', part, values: { order } };
    }),
    ...demand.orders.flatMap(({ served }, i): LogRow[] =>
      served === null ? [] : [{ at: served, event: 'order served', values: { order: i + 1 } }],
    ),
  ];
}

/** All events of a run in the order of time; what no policy sees only where it is asked for, but when it was disturbed. */
export function logRows(trace: Trace, withTruth: boolean): LogRow[] {
  const rows = [
    ...trace.disturbances.flatMap(({ name, begin, end }) =>
      spanned({ at: begin, event: 'disturbance', disturbance: name, values: {} }, end),
    ),
    ...trace.responses.flatMap(({ number, does, name, began, ended }) =>
      spanned({ at: began, event: 'response', response: `${number} ${name ?? does}`, values: {} }, ended),
    ),
    ...trace.adjustments.map(
      ({ at, setting, how, to }): LogRow => ({
        ...{ at, event: how, values: { setting, to: new Real(to) } },
      }),
    ),
    ...orderRows(trace),
    ...stateRows(trace),
    ...trace.events.map(partRow),
    ...crewRows(trace),
    ...demandRows(trace),
    ...(withTruth ? trace.truths : []).map(
      (truth): LogRow => ({
        ...{ at: truth.at, event: `true ${truth.kind}`, part: truth.part, station: truth.station },
        values: truthValues(truth),
      }),
    ),
  ];
  return rows.sort((one, other) => one.at - other.at);
}

export function kindOf(value: Value): Kind {
  if (value instanceof Real) return 'float';
  if (typeof value === 'number') return 'integer';
  return typeof value === 'boolean' ? 'boolean' : 'string';
}

/** The names of all values, with their kinds, in the order in which they first appear. */
export function valueKinds(rows: readonly LogRow[]): ReadonlyMap<string, Kind> {
  const kinds = new Map<string, Kind>();
  for (const { values } of rows)
    for (const name in values) if (!kinds.has(name)) kinds.set(name, kindOf(values[name]!));
  return kinds;
}
