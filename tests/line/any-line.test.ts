import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expectShares, forgotten, outcomeOf } from './laws.ts';
import { LENGTH, madeUpLine, WARM_UP } from './made-up-line.ts';

/** Lines in the default run. */
const LINES = 1200;

/** What of the format was not only asked for but seen to happen. */
function seen(scenario: Scenario, outcome: Outcome): string[] {
  const { stations, crew, carriers, demand, calendars } = scenario;
  const shares = (name: string) => outcome.stateShares[name]!;
  const works = ({ name }: { name: string }) => shares(name).working > 0.02;
  const of = (what: string, does: (spec: (typeof stations)[number]) => unknown) =>
    stations.some((spec) => works(spec) && does(spec)) ? [what] : [];
  const breaks = (spec: (typeof stations)[number]) =>
    spec.breakdowns.length > 0 && shares(spec.name).down > 0.02;
  const served = (who: string) => (outcome.crewBusyShares[who] ?? 0) > 0.02;
  const serving = (rule: string) =>
    crew.some(({ name, serves }) => serves === rule && served(name)) ? [`serves ${rule}`] : [];
  const { counts, measures } = outcome;
  return [
    ...(counts.good > 10 ? ['good'] : []),
    ...(counts.reworked > 0 ? ['rework'] : []),
    ...(counts.reMarked > 0 ? ['marks anew'] : []),
    ...(counts.scrapped > 0 ? ['scrap'] : []),
    ...(counts.deburred > 0 ? ['deburring'] : []),
    ...(counts.hopeless > 0 ? ['hopeless rework'] : []),
    ...(counts.forced > 0 ? ['forced'] : []),
    ...(counts.damaged > 0 ? ['damaged'] : []),
    ...(counts.turnedAway > 0 ? ['turned away'] : []),
    ...(Object.values(outcome.stockOutShares).some((share) => share > 0.05) ? ['out of stock'] : []),
    ...(counts.lotsAccepted > 0 ? ['lots accepted'] : []),
    ...(counts.lotsRejected > 0 ? ['lots rejected'] : []),
    ...(['count', 'clock', 'delivery', 'plan'] as const).flatMap((by) =>
      of(`gauged by ${by}`, (spec) => spec.does === 'gauge' && spec.inspection.by === by),
    ),
    ...of('blocked', ({ name }) => shares(name).blocked > 0.05),
    ...of('awaiting technician', ({ name }) => shares(name).awaiting_technician > 0.02),
    ...of('awaiting a spare', ({ name }) => shares(name).awaiting_spare > 0.02),
    ...of('awaiting handling', ({ name }) => shares(name).awaiting_handling > 0.02),
    ...of('off shift', ({ name }) => shares(name).off_shift > 0.02),
    ...['finishes', 'resumes', 'restarts', 'scraps'].flatMap((end) =>
      of(`shift ${end}`, (spec) => spec.shiftEnd === end && shares(spec.name).off_shift > 0.02),
    ),
    ...(calendars.length > 0 && crew.some((one) => one.calendar && served(one.name))
      ? ['crew by hours']
      : []),
    ...of('machines', ({ machines }) => machines > 1),
    ...of(
      'machines without a place between',
      (spec) => spec.machines > 1 && 'buffer' in spec && spec.buffer?.places === 0,
    ),
    ...of('speed loss', ({ speed }) => speed < 1),
    ...of('own handling', ({ handling }) => handling && handling.by === undefined),
    ...of('set-up', ({ name, setUps }) => setUps.length > 0 && shares(name).set_up > 0.02),
    ...of(
      'maintenance',
      (spec) => spec.maintenance.length > 0 && spec.breakdowns.length === 0 && shares(spec.name).down > 0.02,
    ),
    ...of(
      'warm-up',
      ({ name, setUps, warmUp }) => warmUp && setUps.length === 0 && shares(name).set_up > 0.02,
    ),
    ...of('several breakdowns', (spec) => spec.breakdowns.length > 1 && breaks(spec)),
    ...['unloads', 'nothing', 'loads-and-unloads'].flatMap((may) =>
      of(`while down ${may}`, (spec) => spec.whileDown === may && breaks(spec)),
    ),
    ...['first-come', 'priority', 'nearest'].flatMap(serving),
    ...of('conveyor', (spec) => 'buffer' in spec && (spec.buffer?.transit ?? 0) > 0),
    ...of('spacing', (spec) => 'buffer' in spec && (spec.buffer?.spacing ?? 0) > 0),
    ...of('batch', (spec) => spec.does === 'work' && spec.batch > 1),
    ...of(
      'arrivals that wait',
      (spec) => spec.does === 'arrive' && spec.whenFull === 'waits' && shares(spec.name).blocked > 0.02,
    ),
    ...['share', 'priority', 'state'].flatMap((by) =>
      of(`routes by ${by}`, ({ to }) => {
        const stationsThere = to.routes.filter((way) => way.to !== 'good');
        return to.by === by && to.routes.length > 1 && stationsThere.every((way) => works({ name: way.to }));
      }),
    ),
    ...(carriers.length > 0 && counts.good > 10 ? ['carriers'] : []),
    ...of(
      'carriers in the middle',
      (spec) => carriers.some(({ from }) => from === spec.name) && 'buffer' in spec,
    ),
    ...(demand && measures.on_time_rate! > 0 ? ['orders on time'] : []),
    ...(demand && measures.on_time_rate! < 1 ? ['orders late'] : []),
    ...(demand && measures.finished_goods_parts! > 0.8 * demand.finishedGoods.most
      ? ['full finished goods']
      : []),
  ];
}

/** Whether there is a station at which the policy "match" chooses. */
const chooses = ({ policies }: Scenario): boolean =>
  policies.some(({ name, responses }) => name === 'match' && responses.length > 0);

/** The same of runs in which assembly chooses among parts. */
function seenMatched({ policies }: Scenario, { counts }: Outcome): string[] {
  if (counts.firstFits === 0) return [];
  return policies.flatMap(({ responses }) =>
    responses.flatMap((it) => {
      if (it.do !== 'match') return [];
      const patient = it.patience > 0 ? ['patience'] : [];
      return [it.bank === undefined ? 'match among' : 'match from a bank', `rule ${it.rule}`, ...patient];
    }),
  );
}

describe('any line whatever', { timeout: 120_000 }, () => {
  // The run checks itself: parts, stock, carriers and finished goods are conserved, Little's law holds, states fill the
  // time; it throws if not.
  it('keeps the laws of every run, fills its time with states, forgets nobody, and runs the same way twice', () => {
    // What the lines made up happened to show: a check over lines where nothing happens would check nothing.
    const shown = new Map<string, number>();
    fc.assert(
      fc.property(madeUpLine, ({ text, seed }) => {
        const scenario = parseScenario(text, 'any.yaml');
        const outcome = outcomeOf(scenario, seed);
        expect(outcomeOf(scenario, seed)).toEqual(outcome);
        const events = outcome ? seen(scenario, outcome) : ['standstill'];
        for (const what of events) shown.set(what, (shown.get(what) ?? 0) + 1);
        const matched = chooses(scenario) ? outcomeOf(scenario, seed, 'match') : null;
        for (const what of matched ? seenMatched(scenario, matched) : [])
          shown.set(what, (shown.get(what) ?? 0) + 1);
        if (matched) expectShares(matched);
        const borrowed = scenario.policies.some(({ name }) => name === 'borrow')
          ? outcomeOf(scenario, seed, 'borrow')
          : null;
        if (borrowed) expectShares(borrowed);
        if (borrowed && borrowed.counts.cannibalised > 0)
          shown.set('cannibalised', (shown.get('cannibalised') ?? 0) + 1);
        if (!outcome) return;
        expectShares(outcome);
        const line = prepare(scenario, 'carry on', seed);
        line.calendar.run(WARM_UP + LENGTH);
        expect(forgotten(line, scenario)).toEqual([]);
      }),
      // Not made simpler after a failure: each step runs a line three times.
      { numRuns: LINES, seed: 20, endOnFailure: true },
    );
    for (const what of EXPECTED) expect(shown.get(what) ?? 0, what).toBeGreaterThanOrEqual(LINES / 60);
    expect(shown.get('standstill') ?? 0).toBeGreaterThan(0);
  });
});

/** What must have been seen to happen in one of 60 lines at the least. */
const EXPECTED = [
  ...['deburring', 'hopeless rework', 'awaiting a spare', 'cannibalised'],
  ...['good', 'rework', 'scrap', 'turned away', 'out of stock', 'blocked', 'awaiting technician'],
  ...['awaiting handling', 'off shift', 'shift finishes', 'shift resumes', 'shift restarts', 'shift scraps'],
  ...[
    'crew by hours',
    'machines',
    'machines without a place between',
    'speed loss',
    'own handling',
    'set-up',
  ],
  ...['maintenance', 'warm-up', 'several breakdowns', 'while down unloads', 'while down nothing'],
  ...[
    'while down loads-and-unloads',
    'serves first-come',
    'serves priority',
    'serves nearest',
    'conveyor',
    'spacing',
  ],
  ...['batch', 'arrivals that wait', 'routes by share', 'routes by priority', 'routes by state', 'carriers'],
  ...['marks anew', 'carriers in the middle', 'orders on time', 'orders late', 'full finished goods'],
  ...[
    'gauged by count',
    'gauged by clock',
    'gauged by delivery',
    'gauged by plan',
    'lots accepted',
    'lots rejected',
  ],
  ...[
    'forced',
    'damaged',
    'match among',
    'match from a bank',
    'patience',
    'rule classes',
    'rule hardest-fit',
  ],
  ...['rule best-margin', 'rule first-fit'],
];
