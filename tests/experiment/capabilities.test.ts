import { sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { capabilitiesOf } from '../../src/experiment/capabilities.ts';
import { prepare, simulate } from '../../src/experiment/simulate.ts';
import { gaugedCell, small } from '../line/small-line.ts';
import { expectMean } from '../outside-checks/by-simulation.ts';

const cell = gaugedCell({ rim: 'tolerance: 0.6 mm, own-sd: 0.1 mm', reading: 'repeatability: 0.05 mm' });

describe('the capability that a run tells', () => {
  it('is that of the readings after the warm-up', () => {
    const line = prepare(small('600 s', cell, '200 s'), 'carry on', 3);
    const seen: number[] = [];
    line.gauges.get('gauging')!.readingListeners.push((_feature, value) => {
      if (line.calendar.now > 200) seen.push(value);
    });
    line.calendar.run(800);
    const [found] = simulate(small('600 s', cell, '200 s'), 'carry on', 3).capabilities;
    expect(found).toMatchObject({ gauge: 'gauging', feature: 'rim', readings: seen.length });
    expect(seen.length).toBe(60);
    const mean = seen.reduce((sum, value) => sum + value, 0) / seen.length;
    const sd = sampleStandardDeviation(seen);
    expect(found!.mean).toBeCloseTo(mean, 10);
    expect(found!.sdOverall).toBeCloseTo(sd, 10);
    expect(found!.pp).toBeCloseTo(1.2 / (6 * sd), 10);
    expect(found!.ppk).toBeCloseTo(Math.min(100.6 - mean, mean - 99.4) / (3 * sd), 10);
  });

  it('holds the designed spread, with that of the gauge: the root of the sum of squares', () => {
    const sd = Math.hypot(0.1, 0.05);
    const scenario = small('40000 s', cell);
    const runs = Array.from({ length: 30 }, (_, i) => simulate(scenario, 'carry on', i + 1).capabilities[0]!);
    expectMean(
      runs.map(({ sdWithin }) => sdWithin! ** 2),
      sd ** 2,
      0.02,
    );
    expectMean(
      runs.map(({ sdOverall }) => sdOverall! ** 2),
      sd ** 2,
      0.02,
    );
    expectMean(
      runs.map(({ mean }) => mean!),
      100,
    );
  });

  it('is told of features with limits alone', () => {
    expect(simulate(small('600 s', gaugedCell()), 'carry on', 1).capabilities).toEqual([]);
  });
});

describe('the capability over many runs', () => {
  it('is the mean over the runs that give one, with its interval', () => {
    const scenario = small('600 s', cell);
    const runs = [1, 2, 3].map((seed) => simulate(scenario, 'carry on', seed));
    const [found] = capabilitiesOf(runs, 0.95);
    const each = runs.map(({ capabilities }) => capabilities[0]!.cpk!);
    const { cpk, readings } = found!.estimates;
    expect(cpk!.value).toBeCloseTo((each[0]! + each[1]! + each[2]!) / 3, 12);
    // Student's t of 2 degrees of freedom at 97.5 % is 4.303 in the standard table.
    const half = (4.303 * sampleStandardDeviation(each)) / Math.sqrt(3);
    expect(cpk!.upper! - cpk!.value).toBeCloseTo(half, 3);
    expect(readings!.value).toBe(runs[0]!.capabilities[0]!.readings);
  });

  it('has no value where no run has', () => {
    const plain = small('600 s', gaugedCell({ rim: 'tolerance: 0.6 mm' }));
    const [found] = capabilitiesOf([simulate(plain, 'carry on', 1)], 0.95);
    expect(found!.estimates.cpk).toBeNull();
    expect(found!.estimates.mean!.value).toBeCloseTo(100, 12);
  });
});
