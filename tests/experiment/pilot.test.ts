import { expect, it } from 'vitest';
import { pilotOf, UnsettledError } from '../../src/experiment/pilot.ts';
import { piloted } from '../../src/experiment/piloted.ts';
import type { ScenarioFile } from '../../src/experiment/scenario-file.ts';
import { settledBy } from '../../src/experiment/settled.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { parseJoined } from '../../src/scenario/parse.ts';

/** A line whose parts ride for an hour before the first comes out, then one a minute. */
const line = (run: string) => `mendline: 1
title: A long way
about: made up
run: { ${run}, seeds: 2 }
stock:
  blank: { on-hand: 100000, reorder-at: 0, order: 1, lead-time: 1 h }
stations:
  first: { does: work, takes: blank, cycle: 60 s, to: last }
  last: { does: work, buffer: { places: 1000, transit: 60 min, spacing: 1 s }, cycle: 60 s, to: good }
policies:
  carry on: []
`;

function fileOf(run: string): ScenarioFile {
  const text = line(run);
  const { scenario, raw } = parseJoined({ source: 'line', text }, []);
  return { path: 'line', text, sha256: '', scenario, raw, supplements: [] };
}

function pilot({ scenario }: ScenarioFile) {
  const { course } = simulate(piloted(scenario), 'carry on', 10_001, true);
  return pilotOf(scenario, 'carry on', [course!.good]);
}

it('is cut by MSER-5 where the first part comes out, and the scenario runs with that warm-up', () => {
  const file = fileOf('warm-up: by-pilot, length: 10 h');
  const found = pilot(file);
  expect(found).toMatchObject({ by: 'pilot', warmUp: found.settled, length: 36_000, batch: 360, runs: 1 });
  // First out after a cycle, the way and another cycle; the batch in which that is is mixed.
  const first = 60 + 3600 + 60;
  expect(found.settled).toBeGreaterThanOrEqual(first);
  expect(found.settled).toBeLessThanOrEqual(first + 2 * 360);
  expect(found.rates.at(-1)).toBeCloseTo(60, 9);
  const settled = settledBy(file, found);
  expect(settled.scenario.run).toMatchObject({ warmUp: found.settled, length: 36_000 });
  expect(simulate(settled.scenario, 'carry on', 1).measures.throughput_per_h).toBeCloseTo(60, 1);
});

it('leaves a warm-up that is given or none as it is', () => {
  for (const [run, by] of [
    ['warm-up: 30 min, length: 10 h', 'given'],
    ['warm-up: none, length: 10 h', 'none'],
    ['warm-up: 0 s, length: 10 h', 'none'],
  ] as const) {
    const file = fileOf(run);
    const found = pilot(file);
    expect(found.by).toBe(by);
    expect(settledBy(file, found)).toBe(file);
  }
});

it('is refused where nothing settles within half of it', () => {
  const file = fileOf('warm-up: by-pilot, length: 10 h');
  // It goes on growing by as much in each bin: the later the cut, the less the rest varies.
  const growing = Array.from({ length: 500 }, (_, i) => i);
  const found = pilotOf(file.scenario, 'carry on', [growing]);
  expect(found.settled).toBeNull();
  expect(() => settledBy(file, found)).toThrow(UnsettledError);
});
