import fc from 'fast-check';
import { expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { RunawayResponseError } from '../../src/policy/runaway.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { ScenarioError } from '../../src/scenario/problem.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expectShares, forgotten, outcomeOf } from '../line/laws.ts';
import { LENGTH, madeUpLine, WARM_UP } from '../line/made-up-line.ts';

/** Lines in the default run. */
const LINES = 120;

const station = fc.constantFrom('s0', 's1', 's2', 's3', 's4', 'bench');
const seconds = (min: number, max: number) => fc.integer({ min, max }).map((time) => `${time} s`);
const bounds = fc.oneof(
  fc.record({ above: fc.integer({ min: 0, max: 4 }) }),
  fc.record({ below: fc.integer({ min: 1, max: 4 }), until: fc.constantFrom(undefined, 4, 6) }),
);

const simple = fc.oneof(
  fc.record({ stock: fc.constantFrom('sheet', 'mate'), below: fc.integer({ min: 1, max: 20 }) }),
  fc.record({ buffer: station }).chain((of) => bounds.map((its) => ({ ...of, ...its }))),
  fc
    .record({ demand: fc.constantFrom('finished-goods', 'open-orders', 'late-orders') })
    .chain((of) => bounds.map((its) => ({ ...of, ...its }))),
  fc.record({
    station,
    is: fc.constantFrom('down', 'starved', 'blocked', ['working', 'set-up'], 'held'),
    for: seconds(0, 30),
    machines: fc.constantFrom(undefined, 1, 2),
  }),
  fc.record({ from: seconds(0, 500) }),
  fc.record({ to: seconds(1, 500) }),
  fc.record({ response: fc.constantFrom('r0', 'r1', 'r2') }),
);
const condition = fc.oneof(
  { weight: 4, arbitrary: simple },
  { weight: 1, arbitrary: fc.record({ all: fc.array(simple, { minLength: 1, maxLength: 3 }) }) },
  { weight: 1, arbitrary: fc.record({ any: fc.array(simple, { minLength: 1, maxLength: 3 }) }) },
  { weight: 1, arbitrary: fc.record({ not: simple }) },
);
const signal = fc.record({
  at: station,
  sees: fc.constantFrom('misfits', 'off-limits', 'unread'),
  count: fc.integer({ min: 1, max: 2 }),
  'of-last': fc.integer({ min: 2, max: 9 }),
});
const maybe = <T>(arbitrary: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 2, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary });
const delay = fc.oneof(seconds(0, 20), fc.constant({ distribution: 'exponential', mean: '9 s' }));
const timing = {
  when: fc.oneof({ weight: 4, arbitrary: condition }, { weight: 1, arbitrary: signal }),
  notice: maybe(delay),
  'acts-after': maybe(delay),
  until: maybe(fc.oneof(condition, signal)),
  lasts: maybe(fc.constantFrom('1 s', '40 s', { distribution: 'exponential', mean: '30 s' })),
  'cool-down': maybe(seconds(1, 60)),
};

const response = fc.oneof(
  fc.record({ do: fc.constant('hold'), station, ...timing }),
  fc.record({ do: fc.constant('slow'), station, to: fc.constantFrom('20 %', '70 %'), ...timing }),
  fc.record({ do: fc.constant('inspect'), at: station, every: fc.integer({ min: 1, max: 3 }), ...timing }),
  fc.record({
    do: fc.constant('reject'),
    at: station,
    to: fc.constantFrom('pass', 'scrap', 'bench'),
    ...timing,
  }),
  fc.record({
    ...{ do: fc.constant('match'), at: station, bank: fc.integer({ min: 1, max: 4 }), ...timing },
    ...{
      guard: fc.constant('0 mm'),
      'mate-repeatability': fc.constant('0.01 mm'),
      takes: fc.constant('1 s'),
    },
    patience: fc.constantFrom('0 s', '20 s'),
  }),
);

type Spec = { readonly [key: string]: unknown };

/** What is asked of some station, asked of one of the line that it may be asked of, if there is one. */
function fitted(asked: unknown, stations: readonly (readonly [string, Spec])[]): unknown {
  if (Array.isArray(asked)) return asked.map((one) => fitted(one, stations));
  if (typeof asked !== 'object' || asked === null) return asked;
  const spec = asked as Spec;
  const does: readonly unknown[] =
    spec.do === 'inspect' || spec.sees === 'off-limits'
      ? ['gauge']
      : spec.do === 'match' || spec.sees === 'misfits'
        ? ['assemble']
        : ['gauge', 'assemble'];
  const pick = (word: string, among: readonly (readonly [string, Spec])[]) =>
    among.length === 0 ? word : among[(word.codePointAt(1) ?? 0) % among.length]![0];
  return Object.fromEntries(
    Object.entries(spec).map(([key, value]) => {
      if (typeof value !== 'string') return [key, fitted(value, stations)];
      if (key === 'at')
        return [
          key,
          pick(
            value,
            stations.filter(([, its]) => does.includes(its.does)),
          ),
        ];
      if (key === 'buffer')
        return [
          key,
          pick(
            value,
            stations.filter(([, its]) => its.buffer !== undefined),
          ),
        ];
      return [key, key === 'station' ? pick(value, stations) : value];
    }),
  );
}

/** The line with a policy of those responses that it can do; null where it can do none. */
function acting(text: string, responses: readonly object[]): Scenario | null {
  const line = JSON.parse(text);
  const taken: object[] = [];
  let found: Scenario | null = null;
  const stations: [string, Spec][] = Object.entries(line.stations);
  for (const asked of responses) {
    const named = { ...(fitted(asked, stations) as object), name: `r${taken.length}` };
    try {
      const policies = { 'carry on': [], act: [...taken, named] };
      found = parseScenario(JSON.stringify({ ...line, policies }), 'any.yaml');
      taken.push(named);
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
    }
  }
  return found;
}

// Each run checks itself, and throws if a part, a piece or a second is lost.
it('any conditions on any line conserve every part, tell the same again, and forget nobody', {
  timeout: 240_000,
}, () => {
  const shown = new Map<string, number>();
  const show = (what: string) => shown.set(what, (shown.get(what) ?? 0) + 1);
  fc.assert(
    fc.property(
      madeUpLine,
      fc.array(response, { minLength: 3, maxLength: 12 }),
      ({ text, seed }, responses) => {
        const scenario = acting(text, responses);
        if (scenario === null) return;
        try {
          const outcome = outcomeOf(scenario, seed, 'act');
          expect(outcomeOf(scenario, seed, 'act')).toEqual(outcome);
          if (!outcome) return;
          expectShares(outcome);
          const carriedOn = outcomeOf(scenario, seed, 'carry on');
          for (const { do: kind } of scenario.policies[1]!.responses) show(kind);
          if (JSON.stringify(carriedOn?.counts) !== JSON.stringify(outcome.counts)) show('acted');
          const line = prepare(scenario, 'act', seed);
          line.calendar.run(WARM_UP + LENGTH);
          expect(forgotten(line, scenario)).toEqual([]);
        } catch (error) {
          // Such as a station that is held while it is idle, which it is no longer then.
          if (!(error instanceof RunawayResponseError)) throw error;
          show('runaway');
        }
      },
    ),
    { numRuns: LINES, seed: 11, endOnFailure: true },
  );
  for (const what of ['hold', 'slow', 'inspect', 'reject', 'match', 'acted'])
    expect(shown.get(what) ?? 0, what).toBeGreaterThanOrEqual(LINES / 60);
  expect(shown.get('runaway') ?? 0).toBeLessThan(LINES / 4);
});
