import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/experiment/simulate.ts';
import { readingBias } from '../../src/line/reading-bias.ts';
import type { SpecOf } from '../../src/scenario/stations.ts';
import { gaugedCell, ran, small } from './small-line.ts';

/** A part of 100 mm, and what its reading says of warmth. */
function warmCell(keys: string, reading: string, offLimits = 'pass') {
  return small('1000 s', gaugedCell({ rim: keys, reading: `repeatability: 0 mm, ${reading}`, offLimits }));
}

// T11, the formula of the tolerance page of mayfieldplastics.com: length x expansion x difference of temperature.
describe('a gauge that reads warm parts', () => {
  it.each([
    ['0.07 mm/m/°C', 'warm-by: 5 °C', 0.035],
    ['0.07 mm/°C/m', 'warm-by: 5 K', 0.035],
    ['7e-5 mm/mm/°C', 'warm-by: -5 °C', -0.035],
    ['0.07 mm/m/°C', 'warm-by: 5 °C, bias: -0.01 mm', 0.025],
    ['0.07 mm/m/°C', 'warm-by: 0 °C', 0],
  ])('of %s with %s reads 100 mm off by so much', (expands, keys, off) => {
    const scenario = warmCell(`expands: ${expands}`, keys);
    const gauge = scenario.stations.find(({ does }) => does === 'gauge') as SpecOf<'gauge'>;
    expect(readingBias(gauge.measures[0]!, scenario.parts[0]!.features[0]!)).toBeCloseTo(off, 12);

    const line = prepare(scenario, 'carry on', 1);
    const seen: number[] = [];
    line.gauges.get('gauging')!.readingListeners.push((feature, reading, row) => {
      seen.push(reading - line.parts.get(row!, feature.truth));
    });
    line.calendar.run(1000);
    expect(seen.length).toBe(99);
    for (const error of seen) expect(error).toBeCloseTo(off, 9);
  });

  it('goes by the size that a class aims at', () => {
    // 25 H7: +0 to +21 µm (ISO 286-2), so the middle is 25.0105 mm; times 1e-3 a degree and 10 degrees.
    const part = gaugedCell({
      rim: 'class: H7, expands: 1 mm/m/°C',
      reading: 'repeatability: 0 mm, warm-by: 10 °C',
    });
    const scenario = small('1 h', part.replace('100 mm', '25 mm'));
    const gauge = scenario.stations.find(({ does }) => does === 'gauge') as SpecOf<'gauge'>;
    expect(readingBias(gauge.measures[0]!, scenario.parts[0]!.features[0]!)).toBeCloseTo(0.250105, 9);
  });

  // A true 100 mm within 0.03 mm is read as 100.035 mm; a true 100.05 mm, out of limits, as 99.98 mm when 10 °C colder.
  it.each([
    ['', '0 °C', 0],
    ['', '5 °C', 99],
    [', mould: 100.05 mm', '0 °C', 99],
    [', mould: 100.05 mm', '-10 °C', 0],
  ])('scraps by what it reads: with%s, warm by %s', (mould, warm, scrapped) => {
    const scenario = warmCell(
      `tolerance: 0.03 mm, expands: 0.07 mm/m/°C${mould}`,
      `warm-by: ${warm}`,
      'scrap',
    );
    expect(ran(scenario).counts.scrapped).toBe(scrapped);
  });
});
