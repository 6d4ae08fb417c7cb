import { describe, expect, it } from 'vitest';
import { MEASURES } from '../../src/line/measures.ts';
import { runsCsv } from '../../src/report/csv.ts';
import { outcome } from './fake.ts';

describe('runsCsv', () => {
  it('has a row a run, a column a measure, and a final newline', () => {
    const text = runsCsv([outcome('a', 1), outcome('a', 2)]);
    const lines = text.split('\r\n');
    expect(lines).toHaveLength(4);
    expect(lines[3]).toBe('');
    const header = lines[0]!.split(',');
    for (const { key } of MEASURES) expect(header).toContain(key);
    for (const name of ['count_first_attempts', 'share_form_working', 'stock_out_share_sheet']) {
      expect(header).toContain(name);
    }
    expect(lines[1]!.split(',')).toHaveLength(header.length);
  });

  it('keeps every digit, the sign of a number, and leaves no value empty', () => {
    const [header, row] = runsCsv([outcome('a', 1, { throughput_per_h: 1 / 3, fit_rate: -0.25 })])
      .split('\r\n')
      .map((line) => line.split(','));
    const cell = (key: string) => row![header!.indexOf(key)];
    expect(Number(cell('throughput_per_h'))).toBe(1 / 3);
    expect(cell('fit_rate')).toBe('-0.25');
    expect(cell('scrap_rate')).toBe('');
  });

  it('has a column a crew', () => {
    const busy = (share: number) => ({ ...outcome('a', 1), crewBusyShares: { fitter: share } });
    const [header, row] = runsCsv([busy(0.25)])
      .split('\r\n')
      .map((line) => line.split(','));
    expect(row![header!.indexOf('crew_busy_share_fitter')]).toBe('0.25');
  });

  it('quotes commas, quotes and line breaks', () => {
    expect(runsCsv([outcome('hold, "then"\ngo', 1)])).toContain('\r\n"hold, ""then""\ngo",1,');
  });

  // The signs that OWASP's page on CSV injection names, from memory.
  it.each(['=', '+', '-', '@', '\uFF1D', '\uFF0B', '\uFF0D', '\uFF20'])(
    'guards a name that starts with %s, and no number',
    (sign) => {
      const text = runsCsv([outcome(`${sign}1`, 1, { fit_rate: -0.25, lead_time_s: -1e-7 })]);
      expect(text).toContain(`\r\n'${sign}1,1,`);
      expect(text).toContain(',-0.25,');
      expect(text).toContain(',-1e-7,');
    },
  );

  it.each(['\t', '\r', '\n'])('guards a name that starts with %j', (sign) => {
    expect(runsCsv([outcome(`${sign}=1`, 1)])).toContain(`\r\n"'${sign}'=1",1,`);
    expect(runsCsv([outcome(`${sign}a`, 1)])).toContain(`\r\n"'${sign}a",1,`);
  });

  it.each([';', '\t', '\r\n'])(
    'guards what stands behind %j, which parts fields or lines elsewhere',
    (sign) => {
      expect(runsCsv([outcome(`wait${sign}=1+1`, 1)])).toContain(`\r\n"wait${sign}'=1+1",1,`);
    },
  );

  it('guards a heading, and leaves a sign within a name as it is', () => {
    const busy = { ...outcome('stop-and-fix @ 2 = a+b', 1), crewBusyShares: { ';=1+1': 0.25 } };
    const [heading, row] = runsCsv([busy]).split('\r\n');
    expect(heading).toContain(`,"crew_busy_share_;'=1+1",`);
    expect(row).toMatch(/^stop-and-fix @ 2 = a\+b,1,/);
  });
});
