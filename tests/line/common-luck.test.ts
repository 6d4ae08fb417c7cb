import { describe, expect, it } from 'vitest';
import { prepare, simulate } from '../../src/experiment/simulate.ts';
import { small } from './small-line.ts';

const cell = `
stock:
  sheet: { unlimited: true }
  frame:
    unlimited: true
    features:
      groove: { nominal: 101 mm, own-sd: 0.1 mm }
parts:
  tray:
    features:
      rim: { nominal: 100 mm, tolerance: 0.5 mm, made-at: forming, own-sd: 0.3 mm, gains: { heater: 0.1 mm/°C } }
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 2
    cycle: { distribution: lognormal, mean: 10 s, cv: 30 % }
    settings:
      heater: { target: 150 °C, cycle-sd: 1 °C }
    to: trimming
  trimming:
    does: trim
    buffer: 4
    cycle: { distribution: gamma, mean: 4 s, cv: 50 % }
    to: gauging
  gauging:
    does: gauge
    buffer: 4
    cycle: { distribution: exponential, mean: 4 s }
    every: 3
    measures:
      rim: { repeatability: 0.1 mm }
    off-limits: pass
    to: assembly
  assembly:
    does: assemble
    buffer: 4
    takes: [frame]
    cycle: { distribution: exponential, mean: 4 s }
    fits: [{ hole: frame.groove, shaft: rim, least: 0.4 mm, most: 1.6 mm }]
    misfit: scrap
    to: good
disturbances:
  stoppage:
    disturbs: station
    station: trimming
    at: { distribution: exponential, mean: 5 min }
    for: { distribution: exponential, mean: 2 min }
    again-after: { distribution: exponential, mean: 5 min }
policies:
  carry on: []
  as the station does:
    - { do: inspect, at: gauging, every: 3, off-limits: pass }
  inspect all:
    - { do: inspect, at: gauging, every: 1 }
  stop often:
    - do: stop-and-fix
      station: forming
      watch: { at: assembly, sees: misfits, count: 1, of-last: 1 }
      takes: { distribution: exponential, mean: 40 s }`;

const scenario = small('4 h', cell, '10 min');

/** For each of some stations, the cycle of each load in order, and when it began. */
function record(policy: string, seed: number) {
  const line = prepare(scenario, policy, seed);
  const loads = new Map<string, { cycles: number[]; began: number[] }>();
  for (const name of ['forming', 'trimming', 'assembly']) {
    const { operation } = line.stations.get(name)!.machines[0]!;
    const at = { cycles: [] as number[], began: [] as number[] };
    loads.set(name, at);
    const begin = operation.begin.bind(operation);
    operation.begin = (station) => {
      const begun = begin(station);
      if (begun) {
        at.cycles.push(station.cycle);
        at.began.push(line.calendar.now);
      }
      return begun;
    };
  }
  line.calendar.run(4 * 3600);
  return loads;
}

describe('two policies under one seed', () => {
  it('give equal measures when they do the same', () => {
    for (const seed of [1, 2, 3]) {
      const { policy: _, ...plain } = simulate(scenario, 'carry on', seed);
      const { policy: __, ...same } = simulate(scenario, 'as the station does', seed);
      expect(same).toEqual(plain);
    }
  });

  it.each(['inspect all', 'stop often'])('give the k-th part the same times: %s against none', (policy) => {
    const plain = record('carry on', 5);
    const other = record(policy, 5);
    for (const [station, { cycles, began }] of plain) {
      const theirs = other.get(station)!;
      const shared = Math.min(cycles.length, theirs.cycles.length);
      expect(shared).toBeGreaterThan(300);
      expect(theirs.cycles.slice(0, shared)).toEqual(cycles.slice(0, shared));
      // The policies do differ: the same loads came at other times.
      expect(theirs.began.slice(0, shared)).not.toEqual(began.slice(0, shared));
    }
  });

  it('meet other luck under another seed', () => {
    const [one, two] = [record('carry on', 5), record('carry on', 6)];
    expect(two.get('forming')!.cycles.slice(0, 50)).not.toEqual(one.get('forming')!.cycles.slice(0, 50));
  });
});
