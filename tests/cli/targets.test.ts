import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { targetsGiven } from '../../src/cli/targets.ts';
import { UsageError } from '../../src/cli/usage-error.ts';
import { quick, Scratch } from './command.ts';

describe('what --target takes', () => {
  it.each<[string, string, number]>([
    ['throughput 480 /h', 'throughput_per_h', 480],
    ['throughput 8 /min', 'throughput_per_h', 480],
    ['throughput=480 /h', 'throughput_per_h', 480],
    ['throughput 480 good /h', 'throughput_per_h', 480],
    ['throughput_per_h 480/h', 'throughput_per_h', 480],
    ['scrap rate 2.5 %', 'scrap_rate', 0.025],
    ['lead time 12 min', 'lead_time_s', 720],
    ['  lead time   0.2 h ', 'lead_time_s', 720],
    ['work in progress 30 parts', 'work_in_progress_parts', 30],
    ['orders filled at once 95 %', 'order_fill_rate', 0.95],
    ['stock cost per good 0.3 money', 'stock_cost_per_good', 0.3],
  ])('%s', (text, key, limit) => {
    const [target] = targetsGiven([text]);
    expect(target!.measure.key).toBe(key);
    expect(target!.limit).toBeCloseTo(limit, 9);
  });

  it.each<[string, readonly string[], RegExp]>([
    ['no value', ['throughput'], /expects a measure and a value with its unit, such as "throughput 480 \/h"/],
    ['no measure', ['480 /h'], /expects a measure and a value/],
    ['nothing', [' '], /expects a measure and a value/],
    ['an unknown measure', ['thruput 480 /h'], /"thruput" is no measure; did you mean "throughput"\?/],
    ['no unit', ['throughput 480'], /throughput expects a value such as "480 \/h", not "480"/],
    ['a unit of another kind', ['lead time 480 /h'], /lead time expects a value such as "12 min"/],
    ['a share without %', ['fit rate 0.95'], /fit rate expects a value such as "2 %"/],
    ['parts without a unit', ['work in progress 30'], /such as "30 parts"/],
    ['less than nothing', ['scrap rate -2 %'], /scrap rate is never below 0/],
    ['more than all', ['fit rate 120 %'], /fit rate is never above 100 %/],
    ['the same twice', ['throughput 480 /h', 'throughput 8 /min'], /"throughput 8 \/min" is given twice/],
  ])('refuses %s', (_, given, message) => {
    expect(() => targetsGiven(given)).toThrow(UsageError);
    expect(() => targetsGiven(given)).toThrow(message);
  });
});

describe('compare --target', () => {
  let at: Scratch;
  beforeEach(() => {
    at = new Scratch();
  });
  afterEach(() => at.remove());

  it('tells the share of runs, records the target in the command, and is made again by rerun', async () => {
    const path = at.file('cell.yaml', quick());
    const wanted = ['--target', 'throughput 100 /h', '--target', 'scrap rate 1 %'];
    const { code, out } = await at.mendline(['compare', path, ...wanted, '--out', 'report']);
    expect(code).toBe(0);
    expect(out).toContain('runs with throughput at least 100 good /h');
    const document = JSON.parse(readFileSync(join(at.path, 'report', 'comparison.json'), 'utf8'));
    expect(document.command).toEqual(expect.arrayContaining(wanted));
    for (const { key, limit, at: end, rows } of document.targets)
      for (const { policy, met } of rows) {
        const values = document.runs
          .filter((run: { policy: string }) => run.policy === policy)
          .map((run: { measures: Record<string, number> }) => run.measures[key]);
        const own = values.filter((value: number) => (end === 'least' ? value >= limit : value <= limit));
        expect(met).toBe(own.length);
      }
    const again = await at.mendline(['rerun', 'report']);
    expect(again).toMatchObject({ code: 0 });
  });

  it('refuses before anything is run', async () => {
    const path = at.file('cell.yaml', quick());
    const { code, out, err } = await at.mendline(['compare', path, '--target', 'fit 90 %']);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('did you mean "fit rate"?');
  });
});
