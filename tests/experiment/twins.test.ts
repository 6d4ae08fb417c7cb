import { describe, expect, it } from 'vitest';
import { planTwins } from '../../src/experiment/plan.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import type { TwinKey } from '../../src/experiment/twin-measures.ts';
import { compareTwins, type Twins } from '../../src/experiment/twins.ts';
import { variantOf } from '../../src/experiment/variant.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { gaugedCell } from '../line/small-line.ts';
import { SOUND } from '../scenario/sample.ts';

/** Five hours after no warm-up, by a rolling window of half an hour unless told otherwise. */
function scenarioOf(
  body: string,
  run = '{ warm-up: 0 s, length: 5 h, seeds: 1, rolling: 30 min }',
): Scenario {
  const policies = /^policies:/m.test(body) ? '' : '\npolicies:\n  carry on: []\n';
  return parseScenario(
    `mendline: 1\ntitle: t\nabout: worked out by hand\nrun: ${run}\n${body}${policies}`,
    'twins.yaml',
  );
}

function twinsOf(scenario: Scenario, seeds = 1): Twins {
  const names = scenario.policies.map(({ name }) => name);
  const outcomes = planTwins(names, seeds).map(({ policy, seed, variant, course }) =>
    simulate(variantOf(scenario, variant), policy, seed, course),
  );
  const pairs = outcomes.flatMap((run, i) => (i % 2 === 0 ? [{ run, twin: outcomes[i + 1]! }] : []));
  return compareTwins(names, pairs, scenario.run);
}

const NOTHING = {
  undisturbed_throughput_per_h: 360,
  output_lost_parts: 0,
  depth_per_h: 0,
  time_to_notice_s: null,
  time_to_recover_s: 0,
  lasting_loss_parts: 0,
  resilience: 1,
  scrap_caused_parts: 0,
  rework_caused_parts: 0,
  stock_cost_caused: null,
} as const satisfies Record<TwinKey, number | null>;

describe('a line that gives a part every 10 s and stands still for 30 min', () => {
  const only = (disturbances: string) =>
    scenarioOf(`
stock:
  blank: { unlimited: true }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
disturbances:
${disturbances}`);
  const stop = only('  stop: { disturbs: station, station: only, at: 7203 s, for: 30 min }');

  it('loses what it would have made meanwhile, and has recovered when the half hour before is within a tenth', () => {
    // Parts leave at 7200 s and then from 9010 s on: those of 7210 to 9000 s are missing, 180 of 1800, in the ten bins
    // of 3 min from 7200 to 9000 s. The rolling rate falls to nothing. It is short while more than one bin of its window
    // is empty: the last such window ends at 9000 + 24 min, 54 min after 7200 s, when the first part was missed.
    expect(twinsOf(stop).runs[0]!.values).toEqual({
      ...NOTHING,
      output_lost_parts: 180,
      depth_per_h: 360,
      time_to_recover_s: 54 * 60,
      lasting_loss_parts: 180,
      resilience: 0.9,
    });
  });

  it('gives the curve over windows that end from half an hour on, and says when it stood still', () => {
    const [curve] = twinsOf(stop).curves;
    expect(curve!.times.slice(0, 2)).toEqual([1800, 1980]);
    expect(curve!.times.at(-1)).toBe(5 * 3600);
    expect(curve!.twin.every((rate) => rate === 360)).toBe(true);
    const at = (time: number) => curve!.disturbed[curve!.times.indexOf(time)]!;
    expect([7200, 7380, 9000, 10_800].map((time) => at(time).value)).toEqual([360, 324, 0, 360]);
    expect(at(9000)).toMatchObject({ lower: null, upper: null, runs: 1 });
    expect(curve!.shades).toEqual([{ name: 'stop', from: 7203, to: 9003 }]);
  });

  it('is no worse for a stop of no length, and for one that never comes', () => {
    for (const none of ['at: 7203 s, for: 0 s', 'at: 6 h, for: 30 min'])
      expect(twinsOf(only(`  stop: { disturbs: station, station: only, ${none} }`)).runs[0]!.values).toEqual(
        NOTHING,
      );
  });

  it('gives no time to recover where it still falls short at the end', () => {
    const late = twinsOf(only('  stop: { disturbs: station, station: only, at: 16203 s, for: 30 min }'));
    // Parts leave up to 16200 s, and none until the end at 18000 s.
    expect(late.runs[0]!.values).toMatchObject({
      output_lost_parts: 180,
      lasting_loss_parts: 180,
      time_to_recover_s: null,
    });
    expect(late.measures.map(({ measure }) => measure.key)).not.toContain('time_to_recover_s');
    expect(late.curves[0]!.shades).toEqual([{ name: 'stop', from: 16_203, to: 18_000 }]);
  });

  it('counts from the end of the warm-up on', () => {
    const body = `
stock:
  blank: { unlimited: true }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
disturbances:
  stop: { disturbs: station, station: only, at: 3003 s, for: 20 min }`;
    const twins = twinsOf(scenarioOf(body, '{ warm-up: 1 h, length: 2 h, seeds: 1, rolling: 20 min }'));
    // Of what is missing from 3010 to 4200 s, 60 parts are missing after 3600 s.
    expect(twins.runs[0]!.values).toMatchObject({ output_lost_parts: 60, lasting_loss_parts: 60 });
    expect(twins.curves[0]!.times[0]).toBe(3600 + 1200);
  });
});

it('what a faster station makes up later is not lost, but the shortfall was there', () => {
  const twins = twinsOf(
    scenarioOf(`
stock:
  blank: { unlimited: true }
stations:
  first: { does: work, takes: blank, cycle: 10 s, to: second }
  second: { does: work, buffer: unlimited, cycle: 5 s, to: good }
disturbances:
  stop: { disturbs: station, station: second, at: 7201 s, for: 30 min }`),
  );
  // Parts come to the second at 10, 20, ... s and leave 5 s later. From 7201 to 9001 s it stands still: the ten bins of
  // 3 min from 7200 to 9000 s get none, and then it gives two for one until it has caught up, at 10800 s. The windows
  // miss 18, 36, ..., 180, then 144, 108, 72 and 36, whose sum over ten is the area: 135. The last of these, above a
  // tenth of 180, ends 12 min after 9000 s, 42 min after the first part was missed.
  const [{ values }] = twins.runs as [Twins['runs'][number]];
  expect(values.output_lost_parts).toBe(0);
  expect(values.depth_per_h).toBeCloseTo(360, 9);
  expect(values.lasting_loss_parts).toBeCloseTo(135, 9);
  expect(values.time_to_recover_s).toBe(42 * 60);
});

it('a buffer that lasts as long as the stop leaves nothing to recover', () => {
  const twins = twinsOf(
    scenarioOf(`
stock:
  blank: { unlimited: true }
stations:
  first: { does: work, takes: blank, cycle: 8 s, to: second }
  second: { does: work, buffer: 60, cycle: 10 s, to: good }
disturbances:
  stop: { disturbs: station, station: first, at: 2 h, for: 9 min }`),
  );
  // The first part takes 18 s, so that one of 1800 is still on the line at the end.
  expect(twins.runs[0]!.values).toEqual({ ...NOTHING, undisturbed_throughput_per_h: 359.8 });
});

describe('the time to notice', () => {
  const cell = (policies: string, disturbance = 'at: 1005 s, for: 2000 s') =>
    scenarioOf(`${gaugedCell()}
disturbances:
  hot: { disturbs: setting, setting: heater, by: 10 °C, ${disturbance} }
policies:
${policies}`);
  const retuned =
    '  retune:\n    - { do: retune, setting: heater, by: rim, rule: deadbeat, deadband: 0.05 mm }\n  carry on: []';

  it('is from the beginning of the disturbance to the first action while it lasts', () => {
    // The tray loaded at 1010 s is the first that is off by 1 mm; it is formed at 1020 s and gauged at 1021 s.
    const twins = twinsOf(cell(retuned));
    expect(
      twins.runs.map(({ values, disturbed, answered }) => [values.time_to_notice_s, disturbed, answered]),
    ).toEqual([
      [16, 1, 1],
      [null, 1, 0],
    ]);
    expect(twins.measures.find(({ measure }) => measure.key === 'time_to_notice_s')!.rows).toMatchObject([
      { policy: 'retune', estimate: { value: 16, runs: 1 } },
    ]);
  });

  it('ends with what is drawn of a reserve, too', () => {
    const twins = twinsOf(
      scenarioOf(`
stock:
  blank: { on-hand: 9, reserve: 9 }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }
disturbances:
  stop: { disturbs: station, station: only, at: 1005 s, for: 2000 s }
policies:
  draw: [{ do: draw-on-reserve, stock: blank, when: { from: 1105 s } }]`),
    );
    expect(twins.runs[0]!.values.time_to_notice_s).toBe(100);
  });

  it('is the mean over the disturbances that were answered', () => {
    // It ends at 1985 s, when trays are too small by what the controller holds against it: that is answered after its
    // end, which does not count, and the second at 2105 s as the first was.
    const twins = twinsOf(cell(retuned, 'at: 1005 s, for: 980 s, again-after: 120 s'));
    const [{ values, disturbed, answered }] = twins.runs as [Twins['runs'][number]];
    expect(values.time_to_notice_s).toBeCloseTo(16, 9);
    expect(answered).toBe(disturbed);
    expect(disturbed).toBeGreaterThan(10);
  });

  it('has no value for a response that is in force from the start on alone', () => {
    const twins = twinsOf(cell('  inspect: [{ do: inspect, at: gauging, every: 2 }]'));
    expect(twins.runs[0]).toMatchObject({ disturbed: 1, answered: 0, values: { time_to_notice_s: null } });
  });
});

describe('twins under chance', () => {
  const scenario = parseScenario(SOUND, 'cell.yaml');

  it('meet the same luck: before the first disturbance nothing differs', () => {
    for (const { policy, times, disturbed, twin, shades } of twinsOf(scenario, 3).curves) {
      const first = Math.min(...shades.map(({ from }) => from));
      const before = times.filter((time) => time < first).length;
      for (let i = 0; i < before; i++) expect(disturbed[i]!.value, policy).toBeCloseTo(twin[i]!, 9);
    }
  });

  it('are what they are without disturbances, and their courses add up to what was counted', () => {
    const { name } = scenario.policies[0]!;
    const twin = simulate(variantOf(scenario, { disturbed: false }), name, 1, true);
    const { course, ...plain } = twin;
    expect(plain).toEqual(simulate({ ...scenario, disturbances: [] }, name, 1));
    expect(course!.good.reduce((sum, good) => sum + good, 0)).toBe(twin.counts.good);
    expect(course!.episodes).toEqual([]);
    expect(simulate(scenario, name, 1)).not.toHaveProperty('course');
  });
});
