import fc from 'fast-check';
import { expect, it } from 'vitest';
import { prepare, simulate } from '../../src/experiment/simulate.ts';
import type { Line } from '../../src/line/line.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { STARVED } from '../../src/line/state.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { type Problem, ScenarioError } from '../../src/scenario/problem.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { law, stock } from '../line/supply/made-up-stock.ts';

/** Lines in the default run, and how long each runs, s. */
const LINES = 400;
const LENGTH = 700;

const low = (name: string) =>
  fc
    .record({ below: fc.integer({ min: 1, max: 12 }), more: fc.integer({ min: 0, max: 8 }) })
    .map(({ below, more }) => ({ stock: name, below, until: below + more }));
const any = fc.constantFrom('sheet', 'mate', 'mate b', 'pin').chain(low);
/** Mostly in force when the mate itself is out. */
const out = fc.oneof(
  { weight: 3, arbitrary: fc.constant({ stock: 'mate', below: 1 }) },
  { weight: 1, arbitrary: any },
);

const response = fc.oneof(
  fc.record({ do: fc.constant('hold'), station: fc.constantFrom('first', 'second', 'third'), when: any }),
  fc.record({
    ...{ do: fc.constant('slow'), station: fc.constantFrom('first', 'second') },
    ...{ to: fc.constantFrom('20 %', '60 %', '100 %'), when: any },
  }),
  fc.record({
    ...{ do: fc.constant('speed-up'), station: fc.constantFrom('first', 'second') },
    ...{ to: fc.constantFrom('120 %', '400 %'), when: any },
  }),
  fc.record({
    ...{ do: fc.constant('draw-on-reserve'), stock: fc.constantFrom('sheet', 'mate', 'pin') },
    ...{ pieces: fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }), when: any },
  }),
  fc.record({ do: fc.constant('expedite'), stock: fc.constantFrom('sheet', 'mate', 'pin'), when: any }),
  fc.record({
    do: fc.constant('retarget'),
    setting: fc.constant('heater'),
    by: fc.constant('4 °C'),
    when: any,
  }),
  fc.record({
    ...{ do: fc.constant('substitute'), when: out },
    ...{ for: fc.constant('mate'), by: fc.constantFrom('mate b', 'mate c') },
  }),
  fc.record({
    do: fc.constant('substitute'),
    ...{ for: fc.constant('mate b'), by: fc.constant('mate c'), when: low('mate b') },
  }),
  fc.record({
    ...{ do: fc.constant('substitute'), when: low('sheet') },
    ...{ for: fc.constant('sheet'), by: fc.constant('thick') },
  }),
);
const ahead = fc.record({
  ...{ do: fc.constant('build-ahead'), at: fc.constant('second'), without: fc.constant('mate') },
  ...{ 'up-to': fc.integer({ min: 1, max: 6 }), finish: law(0, 6), when: out },
});

/** What is held in reserve keeps. */
const reserve = { reserve: 6, 'shelf-life': undefined };

const groove = (nominal: string) => ({
  features: { groove: { nominal, 'own-sd': '0.2 mm', 'lot-sd': '0.1 mm' } },
});
const thickness = (nominal: string) => ({ thickness: { nominal, 'own-sd': '0.02 mm' } });

const line = fc
  .record({
    ...{ sheet: stock, thick: stock, mate: stock, other: stock, third: stock, pin: stock },
    ...{ cycle: law(1, 10), serving: law(0, 8), every: law(3, 20) },
    ...{ machines: fc.integer({ min: 1, max: 3 }), buffer: fc.constantFrom(0, 2, 'unlimited') },
    ...{ perSheet: fc.integer({ min: 1, max: 3 }), tries: fc.integer({ min: 1, max: 3 }) },
    without: fc.constantFrom('wait', 'wait', 'scrap'),
    halt: fc.record({ at: law(1, 60), for: law(1, 30), 'again-after': law(10, 60) }),
    cycleThen: fc.constantFrom('resumes', 'restarts', 'scraps'),
    responses: fc.array(response, { minLength: 1, maxLength: 4 }),
    ahead: fc.option(ahead, { nil: undefined, freq: 3 }),
    carried: fc.boolean(),
    seed: fc.integer({ min: 1, max: 1000 }),
  })
  .map((it) => ({
    seed: it.seed,
    text: JSON.stringify({
      ...{ mendline: 1, title: 'any', about: 'shortages made up at random' },
      run: { 'warm-up': `${LENGTH / 4} s`, length: `${LENGTH} s`, seeds: 1 },
      stock: {
        sheet: { ...it.sheet, ...reserve, ...thickness('0.5 mm') },
        thick: {
          ...{ ...it.thick, ...thickness('0.6 mm'), 'stands-in-for': 'sheet' },
          ...{ settings: { heater: '153 °C' }, shifts: { rim: '0.1 mm' } },
        },
        mate: { ...it.mate, ...reserve, ...groove('11 mm') },
        'mate b': { ...it.other, ...groove('10.8 mm'), 'stands-in-for': 'mate' },
        'mate c': { ...it.third, ...groove('11.2 mm'), 'stands-in-for': 'mate b' },
        pin: { ...it.pin, ...reserve },
      },
      parts: {
        tray: {
          features: {
            rim: {
              ...{ nominal: '10 mm', 'made-at': 'first', 'own-sd': '0.2 mm', 'lot-sd': '0.1 mm' },
              gains: { heater: '0.05 mm/°C', thickness: '1 mm/mm' },
            },
          },
        },
      },
      stations: {
        first: {
          ...{ does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': it.perSheet, machines: it.machines },
          ...{ cycle: it.cycle, settings: { heater: { target: '150 °C' } }, to: 'second' },
        },
        second: {
          ...{ does: 'assemble', buffer: it.buffer, takes: ['pin', 'mate'], machines: it.machines },
          ...{ cycle: it.serving, misfit: 'scrap', 'without-mates': it.without, 'mate-tries': it.tries },
          fits: [{ hole: 'mate.groove', shaft: 'rim', least: '0.5 mm', most: '1.5 mm' }],
          forcing: { stiffness: '100 N/mm', limit: '20 N', damages: '30 %', takes: '2 s' },
          to: 'third',
        },
        // Shares the pins.
        third: {
          ...{ does: 'assemble', buffer: 1, takes: ['pin'], cycle: it.serving },
          ...{ fits: [], misfit: 'scrap', to: 'good' },
        },
      },
      ...(it.carried && { carriers: { tray: { number: 12, from: 'first', to: 'third', return: '2 s' } } }),
      disturbances: { halt: { disturbs: 'station', station: 'second', cycle: it.cycleThen, ...it.halt } },
      policies: { short: it.ahead ? [...it.responses, it.ahead] : it.responses, 'carry on': [] },
    }),
  }));

/** Null where a station would be held for good, which is refused. */
function read(text: string): Scenario | null {
  try {
    return parseScenario(text, 'any.yaml');
  } catch (error) {
    const unending = ({ message }: Problem) => /held for good|would never bring it down/.test(message);
    if (error instanceof ScenarioError && error.problems.every(unending)) return null;
    throw error;
  }
}

/** Machines that wait although what they wait for is there: the line forgot to tell them. */
function forgotten({ stations, assemblies }: Line): string[] {
  return [...stations.values()].flatMap(({ name, machines }) => {
    const ahead = assemblies.get(name)?.ahead;
    return machines.flatMap((machine) => {
      if (machine.state !== STARVED) return [];
      const there = machine.inbox === null || machine.inbox.count > 0;
      return ahead?.couldResume || (there && machine.operation.ready(machine)) ? [machine.name] : [];
    });
  });
}

/** What of the responses was seen to do something. */
function seen({ counts, stateShares, stocks, did = {} }: Outcome): string[] {
  return [
    ...(counts.substituted > 0 ? ['substituted'] : []),
    ...(counts.setAside > 0 ? ['set aside'] : []),
    ...(Object.values(did).some((much) => much > 0) ? ['drawn'] : []),
    ...(counts.good > 5 ? ['good'] : []),
    ...(Object.values(stateShares).some(({ held }) => held > 0.02) ? ['held'] : []),
    ...(Object.values(stocks).some(({ expedite_cost: cost }) => (cost ?? 0) > 0) ? ['sped up'] : []),
    ...['thick', 'mate b', 'mate c'].filter((name) => stocks[name]!.delivered_pieces! > 0),
  ];
}

// Each run checks itself: parts on machines, in buffers and put aside are those in the line, each piece of each stock is on
// hand, was used, is in hand or was lost. It throws if not.
it('any responses to any shortage conserve every part and every piece, and forget nobody', {
  timeout: 120_000,
}, () => {
  const shown = new Map<string, number>();
  fc.assert(
    fc.property(line, ({ text, seed }) => {
      const scenario = read(text);
      fc.pre(scenario !== null);
      if (scenario === null) return;
      const outcome = simulate(scenario, 'short', seed);
      expect(simulate(scenario, 'short', seed)).toEqual(outcome);
      for (const what of seen(outcome)) shown.set(what, (shown.get(what) ?? 0) + 1);
      for (const shares of Object.values(outcome.stateShares)) {
        expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
      }
      const again = prepare(scenario, 'short', seed);
      again.calendar.run(1.25 * LENGTH);
      expect(forgotten(again)).toEqual([]);
    }),
    { numRuns: LINES, seed: 9, endOnFailure: true },
  );
  for (const what of [
    'substituted',
    'set aside',
    'good',
    'held',
    'sped up',
    'drawn',
    'thick',
    'mate b',
    'mate c',
  ])
    expect(shown.get(what) ?? 0, what).toBeGreaterThanOrEqual(LINES / 20);
});
