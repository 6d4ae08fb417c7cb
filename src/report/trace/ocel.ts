import type { Trace } from '../../line/trace/trace.ts';
import { originOf } from '../made-from.ts';
import { originRows } from '../origin.ts';
import type { Pieces } from '../output-folder.ts';
import { MADE_FROM_KEY, RUN } from '../record.ts';
import { type Kind, kindOf, type LogRow, Real, type Value } from './log-rows.ts';
import type { TraceSource } from './trace-json.ts';

/** What the start of a run is called where a date is asked for: runs have none of their own. */
export const ORIGIN = Date.UTC(2000, 0, 1);

interface Attribute {
  readonly name: string;
  readonly value: Value;
}
interface Relationship {
  readonly objectId: string;
  readonly qualifier: string;
}
interface OcelObject {
  readonly id: string;
  readonly type: string;
  readonly attributes: readonly (Attribute & { readonly time: string })[];
  readonly relationships: readonly Relationship[];
}
interface OcelEvent {
  readonly id: string;
  readonly type: string;
  readonly time: string;
  readonly attributes: readonly Attribute[];
  readonly relationships: readonly Relationship[];
}
interface OcelType {
  readonly name: string;
  readonly attributes: readonly { readonly name: string; readonly type: Kind }[];
}

const timeText = (seconds: number) => new Date(ORIGIN + Math.round(seconds * 1000)).toISOString();

/** The kind stands first and a number last, so that no two names give the same. */
const ids = {
  part: (number: number) => `part/${number}`,
  /** What a part became when mates were joined to it, time by time. */
  assembly: (part: number, time: number) => `assembly/${part}/${time}`,
  piece: (stock: string, piece: number) => `piece/${stock}/${piece}`,
  lot: (stock: string, lot: number) => `lot/${stock}/${lot}`,
  stock: (name: string) => `stock/${name}`,
  station: (name: string) => `station/${name}`,
  machine: (station: string, slot: number) => `machine/${station}/${slot + 1}`,
  disturbance: (name: string) => `disturbance/${name}`,
  response: (name: string) => `response/${name}`,
  carriers: (name: string) => `carriers/${name}`,
  member: (crew: string, member: number) => `crew/${crew}/${member}`,
  order: (number: number) => `order/${number}`,
};

/** All objects, each once, in the order in which they come up. */
class Objects {
  readonly all = new Map<string, OcelObject>();
  /** How often mates have been joined to each part so far. */
  private readonly joined = new Map<number, number>();

  /** The events come again, from the first on; the objects are known. */
  again(): void {
    this.joined.clear();
  }

  add(
    id: string,
    type: string,
    values: Readonly<Record<string, Value>>,
    relationships: readonly Relationship[] = [],
    at = 0,
  ): string {
    if (this.all.has(id)) return id;
    const attributes = Object.entries(values).map(([name, value]) => ({ name, time: timeText(at), value }));
    this.all.set(id, { id, type, attributes, relationships });
    return id;
  }

  lot(stock: string, number: number, at: number): string {
    const of = this.add(ids.stock(stock), 'stock', { name: stock });
    return this.add(
      ids.lot(stock, number),
      'lot',
      { stock, number },
      [{ objectId: of, qualifier: 'of stock' }],
      at,
    );
  }

  piece({ stock, lot, piece }: { stock: string; lot: number; piece: number }, at: number): string {
    const of = this.lot(stock, lot, at);
    const related = [{ objectId: of, qualifier: 'of lot' }];
    return this.add(ids.piece(stock, piece), 'piece', { stock, number: piece }, related, at);
  }

  /** The assembly that a part is in; null where nothing has been joined to it. */
  assemblyOf(part: number): string | null {
    const time = this.joined.get(part);
    return time === undefined ? null : ids.assembly(part, time);
  }

  /** A part and what it is in, with these mates. */
  join(part: number, mates: readonly string[], at: number): string {
    const related = [
      { objectId: this.assemblyOf(part) ?? ids.part(part), qualifier: 'has part' },
      ...mates.map((objectId) => ({ objectId, qualifier: 'has mate' })),
    ];
    const time = (this.joined.get(part) ?? 0) + 1;
    this.joined.set(part, time);
    return this.add(ids.assembly(part, time), 'assembly', { part, number: time }, related, at);
  }
}

/** Whether the part, with what it has already, and these mates are one from this event on. */
const joins = ({ event, values }: LogRow) =>
  event === 'tried' && (values.result === 'fits' || values.result === 'pressed');

/** The stations with their machines, whose places are known by name. */
function addStations({ stations }: Trace, objects: Objects): ReadonlyMap<string, string> {
  const machines = new Map<string, string>();
  for (const { name, does, machines: own } of stations) {
    const station = objects.add(ids.station(name), 'station', { name, does });
    for (const [slot, machine] of own.entries()) {
      const related = [{ objectId: station, qualifier: 'of station' }];
      const id = objects.add(ids.machine(name, slot), 'machine', { name: machine.name }, related);
      machines.set(`${name}\n${machine.name}`, id);
    }
  }
  return machines;
}

/** What a row happened to. */
function relationsOf(row: LogRow, objects: Objects, machines: ReadonlyMap<string, string>): Relationship[] {
  const { at, part, station, machine, stock, lot, pieces = [], disturbance, response } = row;
  const related: Relationship[] = [];
  const relate = (objectId: string, qualifier: string) => void related.push({ objectId, qualifier });
  const made = pieces.map((piece) => objects.piece(piece, at));
  if (part !== undefined) {
    const from =
      row.event === 'started' ? made.map((objectId) => ({ objectId, qualifier: 'made from' })) : [];
    relate(objects.add(ids.part(part), 'part', { number: part }, from, at), 'part');
    const within = objects.assemblyOf(part);
    if (within !== null) relate(within, 'assembly');
    if (joins(row)) relate(objects.join(part, made, at), 'makes');
  }
  for (const id of made) relate(id, row.event === 'started' ? 'from' : 'mate');
  if (station !== undefined) relate(ids.station(station), 'at');
  if (machine !== undefined) relate(machines.get(`${station}\n${machine}`)!, 'on');
  if (stock !== undefined) {
    relate(objects.lot(stock, lot!, at), 'lot');
    relate(ids.stock(stock), 'stock');
  }
  if (disturbance !== undefined)
    relate(objects.add(ids.disturbance(disturbance), 'disturbance', { name: disturbance }), 'disturbance');
  if (response !== undefined)
    relate(objects.add(ids.response(response), 'response', { name: response }), 'response');
  related.push(...named(row, objects));
  return related;
}

/** Carriers, somebody of a crew, or an order, which a row names among its values. */
function named({ values: { carriers, crew, member, order } }: LogRow, objects: Objects): Relationship[] {
  const related: Relationship[] = [];
  const relate = (objectId: string, qualifier: string) => void related.push({ objectId, qualifier });
  if (typeof carriers === 'string')
    relate(objects.add(ids.carriers(carriers), 'carriers', { name: carriers }), 'carriers');
  if (typeof crew === 'string' && typeof member === 'number')
    relate(objects.add(ids.member(crew, member), 'crew member', { crew, number: member }), 'by');
  if (typeof order === 'number') relate(objects.add(ids.order(order), 'order', { number: order }), 'order');
  return related;
}

/** The types that there are, each with all attributes that any of them has. */
function typesOf(
  them: Iterable<{ readonly type: string; readonly attributes: readonly Attribute[] }>,
): OcelType[] {
  const types = new Map<string, Map<string, Kind>>();
  for (const { type, attributes } of them) {
    if (!types.has(type)) types.set(type, new Map());
    const known = types.get(type)!;
    for (const { name, value } of attributes) if (!known.has(name)) known.set(name, kindOf(value));
  }
  return [...types].map(([name, attributes]) => ({
    name,
    attributes: [...attributes].map(([attribute, type]) => ({ name: attribute, type })),
  }));
}

/**
 * The log as OCEL 2.0 in its JSON format (ocel-standard.org, version 2.0, 2023): events with the objects that they
 * happened to. Second 0 of the run is called 2000-01-01T00:00:00Z, and times are rounded to the millisecond. Where the log
 * comes from stands in the one object of the type "run". One event or object a line.
 * @param madeFrom where it comes from, as data
 */
export function* ocelText(rows: readonly LogRow[], { trace, from }: TraceSource, madeFrom: object): Pieces {
  const objects = new Objects();
  objects.add(RUN, 'run', {
    ...Object.fromEntries(originRows(originOf(from, String(trace.seed)))),
    ...{ title: from.scenario.title, policy: trace.policy, seed: trace.seed },
    ...{ warm_up_s: new Real(trace.warmUp), end_s: new Real(trace.end) },
    [MADE_FROM_KEY]: JSON.stringify(madeFrom),
  });
  const machines = addStations(trace, objects);
  // Gone through twice, as types come first and all events need not be in memory at once.
  const events = function* (): Generator<OcelEvent> {
    objects.again();
    for (const [i, row] of rows.entries())
      yield {
        id: `event/${i + 1}`,
        type: row.event,
        time: timeText(row.at),
        attributes: Object.entries(row.values).map(([name, value]) => ({ name, value })),
        relationships: relationsOf(row, objects, machines),
      };
  };
  yield '{\n';
  yield* section('eventTypes', typesOf(events()));
  yield ',\n';
  yield* section('objectTypes', typesOf(objects.all.values()));
  yield ',\n';
  yield* section('events', events());
  yield ',\n';
  yield* section('objects', objects.all.values());
  yield '\n}\n';
}

function* section(name: string, them: Iterable<object>): Pieces {
  let before = `"${name}":[\n`;
  for (const one of them) {
    yield before + JSON.stringify(one);
    before = ',\n';
  }
  yield '\n]';
}
