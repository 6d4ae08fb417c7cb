import { ByteWriter, ParquetWriter, schemaFromColumnData } from 'hyparquet-writer';
import { type Cell, csvLines } from '../csv.ts';
import { originOf } from '../made-from.ts';
import { originRows } from '../origin.ts';
import type { Pieces } from '../output-folder.ts';
import { MADE_FROM_KEY } from '../record.ts';
import { type Kind, type LogRow, Real, type Value, valueKinds } from './log-rows.ts';
import type { TraceSource } from './trace-json.ts';

interface Column {
  readonly name: string;
  readonly kind: Kind;
  readonly of: (row: LogRow, i: number) => Exclude<Value, Real> | undefined;
}

const plain = (value: Value | undefined) => (value instanceof Real ? value.value : value);

/** The columns of a log: what each event is about, and what is said of it. */
function columnsOf(rows: readonly LogRow[]): Column[] {
  return [
    { name: 'event_id', kind: 'integer', of: (_, i) => i + 1 },
    { name: 'time_s', kind: 'float', of: ({ at }) => at },
    { name: 'event', kind: 'string', of: ({ event }) => event },
    { name: 'part', kind: 'integer', of: ({ part }) => part },
    { name: 'station', kind: 'string', of: ({ station }) => station },
    { name: 'machine', kind: 'string', of: ({ machine }) => machine },
    { name: 'stock', kind: 'string', of: ({ stock }) => stock },
    { name: 'lot', kind: 'integer', of: ({ lot }) => lot },
    { name: 'disturbance', kind: 'string', of: ({ disturbance }) => disturbance },
    { name: 'response', kind: 'string', of: ({ response }) => response },
    ...[...valueKinds(rows)].map(
      ([name, kind]): Column => ({ name, kind, of: ({ values }) => plain(values[name]) }),
    ),
  ];
}

const cell = (value: Exclude<Value, Real> | undefined): Cell =>
  typeof value === 'boolean' ? String(value) : value;

/** One row an event. */
export function* logCsv(rows: readonly LogRow[]): Pieces {
  const columns = columnsOf(rows);
  const cells = function* () {
    for (const [i, row] of rows.entries()) yield columns.map(({ of }) => cell(of(row, i)));
  };
  yield* csvLines(
    columns.map(({ name }) => name),
    cells(),
  );
}

/** Rows that are in memory at once as columns. */
const GROUP = 100_000;
const TYPES = { integer: 'INT32', float: 'DOUBLE', string: 'STRING', boolean: 'BOOLEAN' } as const;

/**
 * The same as Apache Parquet; where it comes from stands in the key-value metadata of the file.
 * @param madeFrom the same as data
 */
export function* logParquet(rows: readonly LogRow[], { trace, from }: TraceSource, madeFrom: object): Pieces {
  const columns = columnsOf(rows);
  const schema = schemaFromColumnData({
    columnData: columns.map(({ name, kind }) => ({ name, type: TYPES[kind], nullable: true, data: [] })),
  });
  const kvMetadata = [
    ...originRows(originOf(from, String(trace.seed))).map(([key, value]) => ({
      ...{ key: `mendline ${key}`, value },
    })),
    { key: MADE_FROM_KEY, value: JSON.stringify(madeFrom) },
  ];
  const writer = new ByteWriter();
  const file = new ParquetWriter({ writer, schema, kvMetadata, createdBy: `mendline ${from.version}` });
  const written = () => {
    const bytes = writer.getBytes().slice();
    // It still counts them, as places in the file go by that.
    writer.index = 0;
    return bytes;
  };
  for (let first = 0; first < rows.length; first += GROUP) {
    const group = rows.slice(first, first + GROUP);
    const columnData = columns.map(({ name, of }) => ({
      ...{ name, data: group.map((row, i) => of(row, first + i) ?? null) },
    }));
    file.write({ columnData, rowGroupSize: GROUP });
    yield written();
  }
  file.finish();
  yield written();
}
