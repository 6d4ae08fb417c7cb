import fc from 'fast-check';
import { expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { ScenarioError } from '../../src/scenario/problem.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expectShares, forgotten, outcomeOf } from '../line/laws.ts';
import { LENGTH, madeUpLine, WARM_UP } from '../line/made-up-line.ts';

/** Lines in the default run. */
const LINES = 300;

const station = fc.constantFrom('s0', 's1', 's2', 's3', 's4', 'bench');
/** Mostly for a while somewhere in the run, so that it begins and ends. */
const when = fc.oneof(
  {
    weight: 3,
    arbitrary: fc
      .record({ from: fc.integer({ min: 0, max: 500 }), lasts: fc.integer({ min: 1, max: 300 }) })
      .map(({ from, lasts }) => ({ from: `${from} s`, to: `${from + lasts} s` })),
  },
  {
    weight: 1,
    arbitrary: fc.record({ stock: fc.constantFrom('sheet', 'mate'), below: fc.integer({ min: 1, max: 20 }) }),
  },
);

/** Some of these can be done on a line made up at random, and some cannot. */
const response = fc.oneof(
  fc.record({ do: fc.constant('reroute'), at: station, to: station, when }),
  fc.record({ do: fc.constant('reroute'), at: station, to: station, when }),
  fc.record({ do: fc.constant('skip'), station, later: fc.constantFrom('yes', 'yes', 'no'), when }),
  fc.record({ do: fc.constant('skip'), station, later: fc.constantFrom('yes', 'yes', 'no'), when }),
  fc.record({ do: fc.constant('speed-up'), station, to: fc.constantFrom('120 %', '300 %'), when }),
  fc.record({
    do: fc.constant('reject'),
    at: station,
    to: fc.constantFrom('pass', 'scrap', 'bench'),
    when,
  }),
  fc.record({ do: fc.constant('change-tool'), station, when }),
  fc.record({ do: fc.constant('change-tool'), station, when }),
  fc.record({
    do: fc.constant('draw-on-reserve'),
    stock: fc.constantFrom('sheet', 'mate', 'element'),
    pieces: fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined }),
    when,
  }),
  fc.record({
    ...{ do: fc.constant('call-crew'), crew: fc.constantFrom('fitter', 'robot'), when },
    by: fc.integer({ min: 1, max: 2 }),
    'comes-after': fc.constantFrom(undefined, '5 s', { distribution: 'exponential', mean: '20 s' }),
  }),
  fc.record({
    ...{ do: fc.constant('prioritise'), crew: fc.constantFrom('fitter', 'robot'), when },
    first: fc.uniqueArray(station, { minLength: 1, maxLength: 2 }),
  }),
  fc.record({ do: fc.constant('hold'), station, when }),
);

/** A station of the line where a tool can be changed, or that has rejects: hardly one would be met by chance. */
function whereItCan(kind: string, stations: readonly [string, Record<string, unknown>][]): object {
  const first = (...does: string[]) => stations.find(([, spec]) => does.includes(spec.does as string))?.[0];
  const trim = first('trim');
  const judge = first('gauge', 'assemble');
  if (kind === 'change-tool' && trim !== undefined) return { station: trim };
  return kind === 'reject' && judge !== undefined ? { at: judge } : {};
}

/** The line with a policy of those responses that it can do; null where it can do none. */
function acting(text: string, responses: readonly object[]): { scenario: Scenario; kinds: string[] } | null {
  const line = JSON.parse(text);
  for (const stock of Object.values<Record<string, unknown>>(line.stock ?? {}))
    if (!stock.unlimited) stock.reserve = 7;
  // Each trimming station has a tool that can be changed when asked for.
  const stations: [string, Record<string, unknown>][] = Object.entries(line.stations);
  const trims = stations.filter(([, spec]) => spec.does === 'trim');
  for (const [, spec] of trims) {
    spec['set-ups'] ??= { tool: { cycles: 50, takes: '4 s' } };
    spec.tool = { ...(spec.tool as object), 'renewed-by': Object.keys(spec['set-ups'] as object) };
  }
  const taken: object[] = [];
  let found: Scenario | null = null;
  for (const asked of responses) {
    const response = { ...asked, ...whereItCan((asked as { do: string }).do, stations) };
    try {
      const policies = { 'carry on': [], act: [...taken, response] };
      found = parseScenario(JSON.stringify({ ...line, policies }), 'any.yaml');
      taken.push(response);
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
    }
  }
  return found && { scenario: found, kinds: taken.map((response) => (response as { do: string }).do) };
}

// Each run checks itself: parts on machines, in buffers and kept for later are those in the line, each piece of each stock
// is on hand, in reserve, was used or lost, and no crew is busier than it can be. It throws if not.
it('any actions on any line conserve every part and every piece, and forget nobody', {
  timeout: 240_000,
}, () => {
  const shown = new Map<string, number>();
  const show = (what: string) => shown.set(what, (shown.get(what) ?? 0) + 1);
  fc.assert(
    fc.property(
      madeUpLine,
      fc.array(response, { minLength: 3, maxLength: 12 }),
      ({ text, seed }, responses) => {
        const made = acting(text, responses);
        if (made === null) return;
        const { scenario, kinds } = made;
        const outcome = outcomeOf(scenario, seed, 'act');
        expect(outcomeOf(scenario, seed, 'act')).toEqual(outcome);
        for (const kind of new Set(kinds)) show(kind);
        if (!outcome) return;
        expectShares(outcome);
        for (const [what, much] of Object.entries(outcome.did ?? {})) {
          expect(much).toBeGreaterThanOrEqual(0);
          if (much > 0) show(what.replace(/_(s\d|bench|sheet|mate|element|fitter|robot)/, ''));
        }
        const line = prepare(scenario, 'act', seed);
        line.calendar.run(WARM_UP + LENGTH);
        expect(forgotten(line, scenario)).toEqual([]);
      },
    ),
    { numRuns: LINES, seed: 7, endOnFailure: true },
  );
  for (const what of EXPECTED) expect(shown.get(what) ?? 0, what).toBeGreaterThanOrEqual(LINES / 60);
});

/** What must have been put to work, or seen to do something, in one of 60 lines at the least. */
const EXPECTED = [
  ...['reroute', 'skip', 'speed-up', 'reject', 'change-tool', 'draw-on-reserve', 'call-crew', 'prioritise'],
  ...['rerouted_parts', 'skipped_parts', 'made_up_parts', 'drawn_pieces', 'called_h', 'tool_changes'],
];
