import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import { describe, expect, it } from 'vitest';
import { logRows } from '../../../src/report/trace/log-rows.ts';
import { logCsv, logParquet } from '../../../src/report/trace/log-table.ts';
import { SOURCE } from './traced-sample.ts';
import { written } from './written.ts';

const bufferOf = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;
/** No field of the sample has a comma or a quotation mark. */
const table = (csv: string) => {
  const [names = [], ...rows] = csv
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(','));
  return rows.map((row) => Object.fromEntries(names.map((name, i) => [name, row[i]!])));
};

describe('the event log as a table', () => {
  it('has a row for each event in the order of time, worked out by hand', () => {
    const { trace } = SOURCE();
    const rows = table(written(logCsv(logRows(trace, false))).toString());
    expect(rows.map(({ event_id }) => Number(event_id))).toEqual(rows.map((_, i) => i + 1));
    const times = rows.map(({ time_s }) => Number(time_s));
    expect(times).toEqual([...times].sort((one, other) => one - other));
    const of = (event: string) => rows.filter((row) => row.event === event);
    expect(of('tried').slice(0, 2)).toMatchObject([
      {
        time_s: '12',
        part: '1',
        station: 'fitting',
        result: 'fits',
        mate_lot_frame: '0',
        mate_piece_frame: '1',
      },
      { time_s: '14', part: '2', station: 'fitting', result: 'tight', mate_piece_frame: '2' },
    ]);
    // Part 1 is not gauged, and its frame is taken at 11 s, which leaves one, so that four are ordered.
    expect(of('ordered')[0]).toMatchObject({ time_s: '11', stock: 'frame', lot: '1', amount: '4' });
    expect(of('delivered')[0]).toMatchObject({ time_s: '16', stock: 'frame', lot: '1', amount: '4' });
    expect(of('gauged')[0]).toMatchObject({
      part: '2',
      known: 'true',
      off_limits: 'true',
      reading_rim_mm: '12.25',
    });
    expect(Object.keys(rows[0]!).filter((name) => name.startsWith('true_'))).toEqual([]);
    expect(Object.keys(table(written(logCsv(logRows(trace, true))).toString())[0]!)).toEqual(
      expect.arrayContaining(['true_rim_mm', 'true_mark_took', 'clearance_1_mm']),
    );
  });

  it('guards names that a spreadsheet would run', () => {
    const csv = written(logCsv(logRows(SOURCE().trace, false))).toString();
    expect(csv).toContain(",'=gauging,");
    expect(csv).toContain(",'@off,");
    expect(csv).not.toMatch(/(?:^|[,\r\n])[=+@]/);
  });

  it('says the same as Parquet, and there where it comes from', async () => {
    const source = SOURCE();
    const rows = logRows(source.trace, true);
    const file = bufferOf(written(logParquet(rows, source, {})));
    const read = await parquetReadObjects({ file });
    const csv = table(written(logCsv(rows)).toString());
    expect(read.map((row) => Object.keys(row))).toEqual(csv.map((row) => Object.keys(row)));
    for (const [i, row] of read.entries())
      for (const [name, value] of Object.entries(row))
        expect(value === null ? '' : String(value), name).toBe(csv[i]![name]!.replace(/^'/, ''));
    const { key_value_metadata: metadata } = parquetMetadata(file);
    expect(metadata).toContainEqual({ key: 'mendline command', value: 'mendline trace odd.yaml --seed 1' });
    expect(metadata).toContainEqual({ key: 'mendline SHA-256 of scenario', value: '0'.repeat(64) });
  });
});
