import { expect, it } from 'vitest';
import { observe } from '../../../src/experiment/observe.ts';
import { cell } from '../prediction/cell.ts';

const total = 2 * 3600;

// A sheet of two every 5 s, the first loaded at 0; cavities 1 and -1, nothing else varies.
it('the probes see every part as it is made, gauged and put together', () => {
  const seen = observe(
    cell({
      perSheet: 2,
      rim: 'tolerance: 0.5 mm, cavities: [0.4 mm, -0.8 mm]',
      frame: 'groove: { nominal: 10.5 mm }',
      fits: '- { hole: frame.groove, shaft: rim, least: 0.2 mm, most: 1 mm }',
      measures: 'rim: { repeatability: 0 mm, bias: 0.4 mm }',
    }),
    1,
  );
  const rim = seen.features.get('rim')!;
  // Loaded at 0, 5, ..., 7200 s.
  expect(rim.values.count).toBe(2 * (total / 5 + 1));
  expect(rim.outside).toBe(rim.values.count / 2);
  const { mean, variance } = rim.values.spread()!;
  expect(mean).toBeCloseTo(9.8, 9);
  expect(variance).toBeCloseTo(0.36, 9);
  // Readings 10.8 of good parts and 9.6 of bad ones, with limits of 9.5 and 10.5: each is taken for the other.
  const gauge = seen.gauges.get('gauging')!;
  const judged = gauge.features.get('rim')!;
  expect(gauge.gauged).toBeGreaterThan(2800);
  expect(judged.gauged).toBe(gauge.gauged);
  expect(Math.abs(judged.off - gauge.gauged / 2)).toBeLessThanOrEqual(0.5);
  expect(judged.goodRejected).toBe(judged.off);
  expect(judged.badPassed).toBe(judged.gauged - judged.off);
  expect(gauge.off).toBe(judged.off);
  // Clearances 0.1, too tight, and 1.3, too loose.
  const fit = seen.fits.get('assembly')!;
  expect(fit.attempts).toBeGreaterThan(2800);
  expect(fit.fits).toBe(0);
  expect(fit.pairs[0]!.tight + fit.pairs[0]!.loose).toBe(fit.attempts);
  expect(fit.pairs[0]!.gap.spread()!.mean).toBeCloseTo(0.7, 3);
});

// One part every 5 s. Nothing fits, and mates that the scenario has tried twice are tried once here.
it('the probes count after the warm-up alone, and every first attempt with a new mate', () => {
  const given = {
    rim: 'own-sd: 0 mm',
    frame: 'groove: { nominal: 10 mm }',
    fits: '- { hole: frame.groove, shaft: rim, least: 1 mm, most: 2 mm }',
    mateTries: 2,
  };
  const all = observe(cell(given), 1);
  const late = observe(cell({ ...given, run: 'run: { warm-up: 1 h, length: 1 h, seeds: 1 }' }), 1);
  expect(all.features.get('rim')!.values.count).toBe(total / 5 + 1);
  expect(late.features.get('rim')!.values.count).toBe(total / 10);
  expect(late.gauges.get('gauging')!.gauged).toBe(total / 10);
  expect(late.fits.get('assembly')!.attempts).toBe(total / 10);
  expect(late.fits.get('assembly')!.pairs[0]!.tight).toBe(total / 10);
  expect(late.readers.get('gauging')!.attempts).toBe(total / 10);
});

it('a gauge that judges no part leaves its probe empty', () => {
  const seen = observe(cell({ every: 100_000 }), 1);
  const gauge = seen.gauges.get('gauging')!;
  expect(gauge.gauged).toBe(0);
  expect(gauge.features.size).toBe(0);
});
