import { parquetWriteBuffer } from 'hyparquet-writer';
import type { Outcome } from '../line/outcome.ts';
import { columnsFor } from './csv.ts';
import { type Origin, originRows } from './origin.ts';

/** Of these every value is text or a whole number; all others are floating. */
const KINDS = { policy: 'STRING', seed: 'INT32' } as const;
const isCount = (name: string) => name === 'events' || name.startsWith('count_') || name.startsWith('did_');

/**
 * One row a run as Apache Parquet, with the columns of runs.csv under the same names; null where the run gives no value.
 * Where they come from stands in the key-value metadata of the file.
 */
export function runsParquet(outcomes: readonly Outcome[], origin: Origin): Uint8Array {
  const columns = columnsFor(outcomes);
  const columnData = columns.map(({ name, of }) => {
    const values = outcomes.map((outcome) => of(outcome) ?? null);
    if (name in KINDS)
      return { name, data: values, type: KINDS[name as keyof typeof KINDS], nullable: false };
    if (!isCount(name)) return { name, data: values, type: 'DOUBLE' as const, nullable: true };
    const whole = values.map((value) => (value === null ? null : BigInt(value)));
    return { name, data: whole, type: 'INT64' as const, nullable: true };
  });
  const kvMetadata = originRows(origin).map(([key, value]) => ({ key: `mendline ${key}`, value }));
  return new Uint8Array(
    parquetWriteBuffer({ columnData, kvMetadata, createdBy: `mendline ${origin.version}` }),
  );
}
