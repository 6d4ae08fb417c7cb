import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/experiment/simulate.ts';
import { traced } from '../../../src/experiment/traced.ts';
import { STATES } from '../../../src/line/state.ts';
import { partLines } from '../../../src/report/trace/part-lines.ts';
import { momentsOf } from '../../../src/report/watch/interest.ts';
import { flowOrder } from '../../../src/report/watch/playback.ts';
import { playbackOf } from '../../../src/report/watch/playback-of.ts';
import { Run } from '../../../src/report/watch/run.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { DISTURBED, quick } from '../../cli/command.ts';
import { oddScenario } from '../trace/traced-sample.ts';

const demo = () => {
  const text = readFileSync('scenarios/tray-cell.yaml', 'utf8').replace('length: 15 h', 'length: 5 h');
  return parseScenario(text, 'tray-cell.yaml');
};
function shortened(name: string, from: string, to: string) {
  const text = readFileSync(`scenarios/${name}.yaml`, 'utf8');
  expect(text).toContain(from);
  return parseScenario(text.replace(from, to), `${name}.yaml`);
}

const CASES = [
  ['a quick cell with rework', () => parseScenario(quick() + DISTURBED, 'quick.yaml'), 'scrap at once'],
  ['an odd cell with two machines', oddScenario, '-carry on'],
  [
    'a cell with carriers and crews',
    () => shortened('bracket-oven', 'warm-up: 168 h, length: 336 h', 'warm-up: 2 h, length: 12 h'),
    'carry on',
  ],
  [
    'a line that makes to stock',
    () => shortened('orders', 'warm-up: 24 h, length: 240 h', 'warm-up: 1 h, length: 4 h'),
    'carry on',
  ],
  ['the demo while its heater runs cold', demo, 'stop and fix'],
] as const;

const watched = (scenario: ReturnType<typeof oddScenario>, policy: string, seed = 3) => {
  const { trace } = traced(scenario, policy, seed);
  const run = new Run(JSON.parse(JSON.stringify(playbackOf(trace, scenario))));
  return { trace, run };
};
const MOMENTS = 41;

describe.each(CASES)('of %s', (_, made, policy) => {
  const scenario = made();
  const { trace, run } = watched(scenario, policy);
  const { stations, stocks, end } = run.playback;

  it('shows at any moment what the engine has come to by then', () => {
    const line = prepare(scenario, policy, 3);
    for (let i = 0; i < MOMENTS; i++) {
      const now = Math.floor((i * end) / 1000 / (MOMENTS - 1));
      line.calendar.run(now);
      for (const [k, { name }] of stations.entries()) {
        const { machines, inbox } = line.stations.get(name)!;
        const states = machines.map((_, machine) => run.stateAt(k, machine, 1000 * now));
        expect(states, `${name} at ${now} s`).toEqual(machines.map(({ state }) => STATES[state]));
        expect(run.frontAt(k, 1000 * now), `${name} at ${now} s`).toBe(inbox?.held ?? null);
      }
      for (const [k, { name }] of stocks.entries()) {
        const stock = line.stocks.get(name)!;
        expect(run.onHandAt(k, 1000 * now), name).toBe(stock.limited ? stock.onHand : null);
      }
      expect(run.goodsAt(1000 * now)).toBe(line.demand?.stock ?? null);
      for (const [k, { name }] of run.crews.entries()) {
        const until = (left: number | null) => Math.min(left ?? now, now);
        const busy = run.crews[k]!.jobs.reduce(
          (sum, { sent, left }) => sum + Math.max(0, until(left) - sent),
          0,
        );
        // To the millisecond for each job.
        expect(Math.abs(busy - line.crews.get(name)!.busySeconds())).toBeLessThan(1);
      }
      const { started, good, scrapped } = run.countsAt(1000 * now);
      expect([started, good, scrapped]).toEqual([line.tally.started, line.tally.good, line.tally.scrapped]);
    }
  });

  it('has as many parts wait in front of a station as the engine counts there', () => {
    for (let i = 0; i < MOMENTS; i++) {
      const now = Math.floor((i * end) / (MOMENTS - 1));
      const there = run.partsAt(now);
      for (const [k, { name }] of stations.entries()) {
        const waiting = there.filter(({ station, manner }) => station === k && manner === 'waits');
        expect(waiting.length, `${name} at ${now} ms`).toBe(run.frontAt(k, now) ?? 0);
      }
      const { started, good, scrapped, turnedAway } = run.countsAt(now);
      expect(there.length).toBeLessThanOrEqual(started - good - scrapped - turnedAway);
    }
  });

  it('tells of every part what the trace tells, to the millisecond and a tenth of a micrometre', () => {
    const short = (value: unknown) =>
      JSON.stringify(value, (key, own) => {
        if (key === 'at') return Math.round(1000 * own);
        return typeof own === 'number' ? Number(own.toFixed(4)) : own;
      });
    for (let part = 1; part <= trace.parts.length; part += Math.ceil(trace.parts.length / 50)) {
      const own = <Of extends { readonly part: number }>(all: readonly Of[]) =>
        all.filter((one) => one.part === part);
      const told = run.told(part);
      const sorted = (all: readonly object[]) =>
        all.map((one) => short(Object.fromEntries(Object.entries(one).sort())));
      expect(sorted(told.events)).toEqual(sorted(own(trace.events)));
      expect(sorted(told.truths)).toEqual(sorted(own(trace.truths)));
      const { seen, truth } = run.storyOf(part);
      expect(seen).toEqual(partLines(trace, scenario, part, false));
      expect(truth.every(({ text }) => text.startsWith('in truth '))).toBe(true);
      expect(truth.length).toBe(own(trace.truths).length);
    }
  });

  it('has a moment to go to for each that something was there, and each part scrapped', () => {
    const moments = momentsOf(run);
    const of = (kind: string) => moments.filter((moment) => moment.kind === kind);
    const ends = trace.disturbances.filter(({ end }) => end !== null).length;
    expect(of('disturbance').length).toBe(trace.disturbances.length + ends);
    expect(of('scrap').map(({ part }) => part)).toEqual(
      trace.events.filter(({ kind }) => kind === 'scrapped').map(({ part }) => part),
    );
    expect(moments.every(({ at }, i) => i === 0 || moments[i - 1]!.at <= at)).toBe(true);
  });
});

it('puts stations in the order in which parts go through them', () => {
  expect(flowOrder(demo())).toEqual(['forming', 'trimming', 'marking', 'gauging', 'assembly', 'bench']);
});
