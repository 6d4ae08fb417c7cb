import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { comparisonJsonSchema } from '../../src/report/comparison-schema.ts';
import { DISTURBED, ended, quick, Scratch } from './command.ts';

let at: Scratch;
beforeEach(() => {
  at = new Scratch();
  at.file('cell.yaml', quick() + DISTURBED);
});
afterEach(() => at.remove());

const report = (folder: string) =>
  Object.fromEntries(
    readdirSync(join(at.path, folder)).map((name) => [
      name,
      readFileSync(join(at.path, folder, name), 'utf8'),
    ]),
  );
const narrow = (...more: string[]) => at.mendline(['compare', 'cell.yaml', '--half-width', ...more]);

describe('compare --half-width', () => {
  it('runs until every mean is known so well, and is else the comparison of so many seeds', async () => {
    const { code, out, err } = await narrow('25 /h', '--out', 'a', '--workers', '2');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('To within \u00b125 good /h at 95 %, each by itself, the mean throughput is:');
    const document = JSON.parse(report('a')['comparison.json']!);
    expect(document.command).toEqual(['compare', 'cell.yaml', '--half-width', '25 /h']);
    const { rows, first_stage: first } = document.half_width;
    const seeds = document.seeds.length;
    expect(first).toBe(10);
    expect(seeds).toBe(Math.max(...rows.map(({ needed }: { needed: number }) => needed)));
    const closed = new Ajv2020({ strict: true, strictTypes: false }).compile(comparisonJsonSchema(true));
    closed(document);
    expect(closed.errors).toBeNull();
    expect(report('a')['comparison.html']).toContain('Number of runs</h2>');

    const again = await at.mendline(['rerun', 'a', '--workers', '1']);
    expect(again.out).toContain('All 4 files have the same bytes.');
  }, 90_000);

  it('ends at the cap, and goes on with --resume to the same bytes', async () => {
    const words = ['lead time=0.01 min', '--at-most', '14', '--seeds', '4'];
    await narrow(...words, '--out', 'whole');
    expect(JSON.parse(report('whole')['comparison.json']!).half_width.rows[0]).toMatchObject({ lower: null });
    const child = at.start(['compare', 'cell.yaml', '--half-width', ...words, '--out', 'a']);
    const end = ended(child);
    const size = () => statSync(join(at.path, 'a', 'runs.journal'), { throwIfNoEntry: false })?.size ?? 0;
    while (size() < 12_000) await setTimeout(5);
    child.kill('SIGINT');
    expect((await end).code).toBe(130);
    const resumed = await narrow(...words, '--out', 'a', '--resume');
    expect(resumed.err).toMatch(/going on from \S+: \d+ of at most 56 runs are there, twins among them/);
    expect(report('a')).toEqual(report('whole'));
  }, 120_000);

  it.each<[string, string[], string]>([
    ['no unit', ['2'], '--half-width "2" has no unit; it expects an amount with its unit'],
    ['nothing', ['0 /h'], '--half-width "0 /h" is not above zero'],
    ['one seed', ['2 /h', '--seeds', '1'], '--seeds 1 is too few'],
    ['a choice as well', ['2 /h', '--until-decided', '--worth', '1 /h'], 'leave out one of them'],
    ['a probability', ['2 /h', '--sure', '95 %'], '--sure is of use with --until-decided alone'],
  ])('refuses %s', async (_, args, told) => {
    const { code, out, err } = await narrow(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(told);
  });
});
