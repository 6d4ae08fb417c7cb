import { describe, expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { STOCK_MEASURES, type StockMeasures } from '../../src/line/supply/stock-measures.ts';
import { comparisonJson, comparisonPieces } from '../../src/report/json.ts';
import { outcome } from './fake.ts';
import { sampleOutcomes } from './sample.ts';

const SCENARIO = { file: 'a.yaml', title: 'A', sha256: 'ab' };

function documentOf(outcomes = sampleOutcomes()) {
  const comparison = compare([...new Set(outcomes.map(({ policy }) => policy))], outcomes);
  return comparisonJson({
    comparison,
    outcomes,
    version: '0.1.0',
    command: ['compare', 'a.yaml'],
    scenario: SCENARIO,
  });
}

describe('comparisonJson', () => {
  it('gives the same text again, whatever the order of keys in its input', () => {
    const turned = sampleOutcomes().map((one) => ({
      ...Object.fromEntries(Object.entries(one).reverse()),
      measures: Object.fromEntries(Object.entries(one.measures).reverse()),
    })) as ReturnType<typeof sampleOutcomes>;
    expect(JSON.stringify(documentOf())).toBe(JSON.stringify(documentOf()));
    expect(JSON.stringify(documentOf(turned))).toBe(JSON.stringify(documentOf()));
  });

  it('names the policies written as code with the hash of their files, and says nothing of them where there are none', () => {
    const outcomes = sampleOutcomes();
    const comparison = compare([...new Set(outcomes.map(({ policy }) => policy))], outcomes);
    const modules = [{ name: 'b', path: 'b.ts', sha256: 'cd', code: 'not told' }];
    const made = comparisonJson({
      comparison,
      outcomes,
      version: '0.1.0',
      command: ['compare', 'a.yaml'],
      scenario: SCENARIO,
      modules,
    });
    expect(made.policy_modules).toEqual([{ policy: 'b', file: 'b.ts', sha256: 'cd' }]);
    expect(documentOf()).not.toHaveProperty('policy_modules');
  });

  it('holds the runs unrounded in keyed units', () => {
    const made = documentOf([outcome('a', 7, { scrap_rate: 1 / 3, lead_time_s: 600 })]);
    expect(made.runs[0]!.measures.scrap_rate).toBe(1 / 3);
    expect(made.seeds).toEqual([7]);
    expect(made.measures.map(({ key, unit }) => [key, unit])).toEqual([
      ['scrap_rate', '1'],
      ['lead_time_s', 's'],
    ]);
    expect(made.measures[1]!.rows[0]).toMatchObject({
      mean: 600,
      lower: null,
      difference: null,
      verdict: null,
    });
  });

  it('holds what is worth having, every pair, and each policy beside the best', () => {
    const outcomes = [1, 2, 3].flatMap((seed) =>
      ['a', 'b', 'c'].map((name, p) =>
        outcome(name, seed, { lead_time_s: 60 * p + seed + ((seed * p) % 3) }),
      ),
    );
    const made = comparisonJson({
      comparison: compare(['a', 'b', 'c'], outcomes, null, new Map([['lead_time_s', 6]])),
      ...{ outcomes, version: '0.1.0', command: ['compare', 'a.yaml'], scenario: SCENARIO },
    });
    const { worth, rows, pairs, best } = made.measures[0]!;
    expect([worth, made.comparisons, made.pair_comparisons]).toEqual([6, 2, 3]);
    expect(rows[1]).toMatchObject({ verdict: 'worse', surely: 'worse', more_runs: null });
    expect(pairs.map(({ policy, other, runs, verdict }) => [policy, other, runs, verdict])).toEqual([
      ['b', 'a', 3, 'worse'],
      ['c', 'a', 3, 'worse'],
      ['c', 'b', 3, 'worse'],
    ]);
    expect(best.map(({ policy, may_be_best, surely_best }) => [policy, may_be_best, surely_best])).toEqual([
      ['a', true, true],
      ['b', false, false],
      ['c', false, false],
    ]);
  });

  it('holds the mean of each crew over the runs of a policy, and leaves out measures that no run gives', () => {
    const runs = ['a', 'b'].flatMap((name, p) =>
      [0.2, 0.4].map((busy, i) => ({
        ...outcome(name, i + 1, { fit_rate: 0.5 }),
        crewBusyShares: { fitter: busy + p / 10 },
      })),
    );
    const made = documentOf(runs);
    expect(made.crew_busy_shares.a!.fitter).toBeCloseTo(0.3, 12);
    expect(made.crew_busy_shares.b!.fitter).toBeCloseTo(0.4, 12);
    expect(made.runs[3]!.crew_busy_shares).toEqual({ fitter: 0.5 });
    expect(made.measures.map(({ key }) => key)).toEqual(['fit_rate']);
    expect(made.runs[0]!.measures.on_time_rate).toBeNull();
  });

  it('holds each limited stock of a run, and its means for each policy over the runs that give a value', () => {
    const stock = (fill_rate: number | null) =>
      ({ ...Object.fromEntries(STOCK_MEASURES.map(({ key }) => [key, 1])), fill_rate }) as StockMeasures;
    const runs = [0.5, null, 0.7].map((fill, i) => ({
      ...outcome('a', i + 1, { fit_rate: 0.5 }),
      stocks: { frame: stock(fill) },
    }));
    const made = documentOf(runs);
    expect(made.runs[1]!.stocks).toEqual([{ stock: 'frame', ...stock(null) }]);
    expect(made.stocks).toEqual([{ policy: 'a', stock: 'frame', estimated_fill_rate: null, ...stock(0.6) }]);
  });

  it('survives being written and read', () => {
    const made = documentOf();
    expect(JSON.parse(JSON.stringify(made))).toEqual(made);
  });
});

it('is written run by run as it would be at once', () => {
  const outcomes = sampleOutcomes();
  const comparison = compare([...new Set(outcomes.map(({ policy }) => policy))], outcomes);
  const source = {
    comparison,
    outcomes,
    version: '0.1.0',
    command: ['compare', 'a.yaml'],
    scenario: SCENARIO,
  };
  expect([...comparisonPieces(source)].join('')).toBe(`${JSON.stringify(comparisonJson(source), null, 2)}\n`);
});
