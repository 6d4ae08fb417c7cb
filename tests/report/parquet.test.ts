import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import { describe, expect, it } from 'vitest';
import { columnsFor, runsCsv } from '../../src/report/csv.ts';
import { runsParquet } from '../../src/report/parquet.ts';
import { outcome } from './fake.ts';
import { ORIGIN } from './origin-sample.ts';
import { sampleOutcomes } from './sample.ts';

/** A file is read as an ArrayBuffer of its own. */
const bufferOf = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;
const read = (bytes: Uint8Array) => parquetReadObjects({ file: bufferOf(bytes) });

describe('runsParquet', () => {
  it('has the columns of the CSV, and its values with every digit', async () => {
    const outcomes = [
      outcome('=a', 1, { throughput_per_h: 1 / 3, fit_rate: -0.25 }),
      { ...outcome('b', 2), did: { 'change tool': 3 } },
    ];
    const rows = await read(runsParquet(outcomes, ORIGIN));
    const columns = columnsFor(outcomes);
    expect(rows.map((row) => Object.keys(row))).toEqual(outcomes.map(() => columns.map(({ name }) => name)));
    expect(runsCsv(outcomes).split('\r\n')[0]!.split(',')).toEqual(Object.keys(rows[0]!));
    for (const [i, row] of rows.entries())
      for (const { name, of } of columns) {
        const value = row[name];
        expect(typeof value === 'bigint' ? Number(value) : value, name).toBe(of(outcomes[i]!) ?? null);
      }
    expect(rows[0]).toMatchObject({
      policy: '=a',
      throughput_per_h: 1 / 3,
      scrap_rate: null,
      count_started: 10n,
    });
    expect(rows.map((row) => row['did_change tool'])).toEqual([null, 3n]);
  });

  it('says in its metadata where the runs come from, and who wrote them', () => {
    const { key_value_metadata, created_by, num_rows } = parquetMetadata(
      bufferOf(runsParquet(sampleOutcomes(), ORIGIN)),
    );
    expect(created_by).toBe('mendline 0.1.0');
    expect(num_rows).toBe(120n);
    expect(key_value_metadata).toEqual(
      expect.arrayContaining([
        { key: 'mendline SHA-256 of scenario', value: ORIGIN.scenario.sha256 },
        { key: 'mendline command', value: 'mendline compare a.yaml --only "hold back"' },
        { key: 'mendline seeds', value: '1 to 30' },
      ]),
    );
  });

  it('gives the same bytes again', () => {
    expect(runsParquet(sampleOutcomes(), ORIGIN)).toEqual(runsParquet(sampleOutcomes(), ORIGIN));
  });
});
