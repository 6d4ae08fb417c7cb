import { describe, expect, it } from 'vitest';
import { undisturbed } from '../../src/disturbance/undisturbed.ts';
import { type Crossed, crossed } from '../../src/experiment/crossed.ts';
import { crossedRuns, planCrossed } from '../../src/experiment/plan-crossed.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { variantOf } from '../../src/experiment/variant.ts';
import { MEASURES, type MeasureKey } from '../../src/line/measures.ts';
import { small } from '../line/small-line.ts';
import { outcome } from '../report/fake.ts';

const SEVERITIES = [0, 1, 2];

/** Made-up values by policy, severity and seed, in one case. */
function made(
  values: Readonly<Record<string, readonly (readonly (number | null)[])[]>>,
  key: MeasureKey = 'throughput_per_h',
): Crossed {
  const crossing = { cases: ['a case'], severities: SEVERITIES, policies: Object.keys(values) };
  const runs = SEVERITIES.flatMap((severity, k) =>
    crossing.policies.flatMap((policy) =>
      values[policy]![k]!.map((value, i) => ({
        case: 'a case',
        severity,
        outcome: outcome(policy, i + 1, value === null ? {} : { [key]: value }),
      })),
    ),
  );
  return crossed(crossing, runs, key);
}

const around = (value: number, by = 1) => [value - by, value, value + by];
const flat = (value: number) => [value, value, value];

describe('a cell', () => {
  it('has the best by its mean, and how far each other is behind, paired by seed', () => {
    const { found } = made({
      a: [around(50), around(40), around(30)],
      b: [around(45), around(45), around(45)],
    });
    const [calm, , hard] = found[0]!.cells;
    expect([calm!.best, hard!.best]).toEqual(['a', 'b']);
    // The luck of the seeds is the same under both, so the paired difference has no spread.
    expect(calm!.standings.map(({ behind }) => behind?.value)).toEqual([undefined, 5]);
    expect(calm!.standings[1]!.behind).toMatchObject({ lower: 5, upper: 5 });
    expect([calm!.level, hard!.level]).toEqual([[], []]);
  });

  // By hand: differences 0, 1, 2, 3 have mean 1.5 and standard error sqrt(5/3/4) = 0.6455; Student's t with three
  // degrees of freedom is 3.18245 at 1 - 0.05/2 and 4.17653 at 1 - 0.05/4 (standard table).
  it('widens for each policy that the best is ahead of', () => {
    const one = [10, 11, 12, 13];
    const two = made({ a: [one, one, one], b: [[10, 10, 10, 10], one, one] }).found[0]!.cells[0]!;
    expect(two.standings[1]!.behind!.lower).toBeCloseTo(1.5 - 3.18245 * Math.sqrt(5 / 12), 4);
    const others = { b: [[10, 10, 10, 10], one, one], c: [[1, 2, 3, 4], one, one] };
    const three = made({ a: [one, one, one], ...others }).found[0]!.cells[0]!;
    expect(three.standings[1]!.behind!.lower).toBeCloseTo(1.5 - 4.17653 * Math.sqrt(5 / 12), 4);
    expect(three.level).toEqual(['b']);
  });

  it('turns round what is better when lower', () => {
    const { found } = made(
      { a: [flat(0.1), flat(0.2), flat(0.5)], b: [flat(0.3), flat(0.3), flat(0.3)] },
      'scrap_rate',
    );
    expect(found[0]!.cells.map(({ best }) => best)).toEqual(['a', 'a', 'b']);
    expect(found[0]!.changes).toEqual([
      { from: 'a', to: 'b', severity: expect.closeTo(1 + 1 / 3, 9), lower: expect.closeTo(1 + 1 / 3, 6), upper: expect.closeTo(1 + 1 / 3, 6) }, // biome-ignore format: one line reads better
    ]);
  });

  it('says nothing sure of one run, of equal policies, and of none with a value', () => {
    const alone = made({ a: [[5], [4], [3]], b: [[4], [4], [4]] }).found[0]!;
    expect(alone.cells.map(({ level }) => level)).toEqual([null, null, null]);
    expect(alone.changes).toEqual([{ from: 'a', to: 'b', severity: 1, lower: null, upper: null }]);
    const same = made({ a: [flat(5), flat(4), flat(3)], b: [flat(5), flat(4), flat(3)] }).found[0]!;
    expect(same.cells.map(({ best, level }) => [best, level])).toEqual(SEVERITIES.map(() => ['a', ['b']]));
    const nothing = [null, null];
    const none = made({ a: [nothing, nothing, nothing], b: [nothing, nothing, nothing] }).found[0]!;
    expect(none.cells.map(({ best }) => best)).toEqual([null, null, null]);
    expect(none).toMatchObject({ first: null, changes: [], leftOut: ['a', 'b'] });
  });

  it('names of several that are equal who leads right after, as the changes do', () => {
    const { cells, first, changes } = made({
      a: [around(5), around(1), around(1)],
      b: [around(5), around(4), around(1)],
      c: [around(2), around(3), around(9)],
    }).found[0]!;
    expect(cells.map(({ best }) => best)).toEqual(['b', 'b', 'c']);
    expect(cells[0]!.level).toEqual(['a']);
    expect([first, ...changes.map(({ to }) => to)]).toEqual(['b', 'c']);
  });

  it('leaves a policy with runs without a value out of the changes, and says so', () => {
    const { found } = made({
      a: [around(5), around(4), around(3)],
      b: [around(9), around(9), [null, 8, 9]],
      c: [around(1), around(1), around(4.5)],
    });
    expect(found[0]!.cells.map(({ best }) => best)).toEqual(['b', 'b', 'b']);
    expect(found[0]).toMatchObject({ first: 'a', leftOut: ['b'] });
    expect(found[0]!.changes.map(({ from, to }) => [from, to])).toEqual([['a', 'c']]);
  });
});

// A line without chance. In 5 h carrying on makes a part in 10 s, 1800 of them, less what the stop of 20 min costs: 120,
// and so many times that at a severity. Going round makes one in 12 s, 1500 of them, and meets no stop. A filling line
// costs one part or two. So carrying on is the better up to severity (1800 - 1500)/120 = 2.5.
describe('a crossed experiment', () => {
  const scenario = small(
    '5 h',
    `
stock:
  blank: { unlimited: true }
stations:
  first: { does: work, takes: blank, cycle: 1 s, to: quick }
  quick: { does: work, buffer: 1, cycle: 10 s, to: good }
  spare: { does: work, buffer: 1, cycle: 12 s, to: good }
disturbances:
  a stop: { disturbs: station, station: quick, at: 2 h, for: 20 min }
  a slow hour: { disturbs: speed, station: spare, to: 50 %, at: 3 h, for: 1 h }
policies:
  carry on: []
  go round:
    - { do: reroute, at: first, to: spare, when: { from: 0 s } }
`,
  );
  const policies = scenario.policies.map(({ name }) => name);
  const crossing = { cases: ['a stop', 'all together'], severities: [0, 1, 4], policies };
  const tasks = planCrossed(crossing, 2);
  const done = tasks.map((task) => ({
    task,
    outcome: simulate(variantOf(scenario, task.variant), task.policy, task.seed),
  }));
  const runs = crossedRuns(crossing, done);

  it('at severity 0 has the bytes of the undisturbed twin, in every case', () => {
    const calm = runs.filter(({ severity }) => severity === 0);
    expect(calm).toHaveLength(2 * 2 * 2);
    for (const { outcome: of } of calm)
      expect(JSON.stringify(of)).toBe(JSON.stringify(simulate(undisturbed(scenario), of.policy, of.seed)));
  });

  it('at severity 1 with all disturbances has the bytes of the scenario as written', () => {
    const plain = runs.filter((run) => run.severity === 1 && run.case === 'all together');
    expect(plain).toHaveLength(2 * 2);
    for (const { outcome: of } of plain)
      expect(JSON.stringify(of)).toBe(JSON.stringify(simulate(scenario, of.policy, of.seed)));
  });

  it('finds where the best changes, by hand', () => {
    const { cells, first, changes } = crossed(crossing, runs, 'throughput_per_h').found[0]!;
    expect(cells.map(({ best, level }) => [best, level])).toEqual([
      ['carry on', []],
      ['carry on', []],
      ['go round', []],
    ]);
    expect([first, changes.length]).toEqual(['carry on', 1]);
    // Two parts of 120 a severity.
    expect(Math.abs(changes[0]!.severity - 2.5)).toBeLessThan(2 / 120);
    expect(changes[0]!.upper! - changes[0]!.lower!).toBeCloseTo(0, 6);
  });

  it('counts each run once, though the twin is in every case', () => {
    const of = crossed(crossing, runs, 'throughput_per_h');
    expect(of.runs).toBe(tasks.length);
    expect(of.seeds).toBe(2);
    expect(of.measure).toBe(MEASURES[0]);
  });
});
