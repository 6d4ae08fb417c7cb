import { expect, it } from 'vitest';
import { stationTexts } from '../../src/report/station-text.ts';
import { gaugedCell, small } from '../line/small-line.ts';

const told = (inspection: string, more: Parameters<typeof gaugedCell>[0] = {}) =>
  stationTexts(small('1 h', gaugedCell({ rim: 'tolerance: 0.2 mm', inspection, buffer: 1000, ...more })));

it('says nothing of a gauge that reads one part in so many', () => {
  expect(told('every: 12')).toEqual([]);
});

it('says when parts are gauged by the clock', () => {
  expect(told('every: 10 min')).toEqual(['"gauging": gauges the next part after each 10 min']);
});

// The plan and its curve: D19 of the published rows, ISO 2859-1:1999, letter J at AQL 1 %: 95.3447 % accepted at 1 %, 1.02978 % and
// 6.51597 % for 95 % and 10 %.
it('says which plan of the standard inspects the lots, and what it lets pass', () => {
  expect(told('acceptance: { lot: 1000, aql: 1 %, rejected: screen }')).toEqual([
    '"gauging": inspects lots of 1000 by ISO 2859-1, level II, AQL 1 %: letter J, sample 80, accepted up to 2 off limits; ' +
      'tightened, sample 80 up to 1; it accepts 95.3 % of lots at the AQL, and 95.0 % and 10.0 % of lots with 1.03 % and 6.52 % off limits; ' +
      'the rest of a rejected lot is gauged',
  ]);
});

it('says how a reading repeats beside whatever else it says of it, and not alone', () => {
  expect(told('every: 1', { reading: 'repeatability: 0.02 mm, resolution: 10 um' })).toEqual([
    '"gauging": reading of "rim": repeats to 0.02 mm, in steps of 0.01 mm',
  ]);
  expect(told('every: 1', { reading: 'repeatability: 0 mm, resolution: 10 um' })).toEqual([
    '"gauging": reading of "rim": in steps of 0.01 mm',
  ]);
  expect(told('every: 1', { reading: 'repeatability: 0.02 mm' })).toEqual([]);
});

it('says what a reading is like', () => {
  expect(
    told('every: 1', {
      reading:
        'repeatability: 0.02 mm, reproducibility: 0.01 mm, resolution: 10 um, takes: 1.5 s, guard: 0.02 mm',
      more: 'appraisers: 3',
    }),
  ).toEqual([
    '"gauging": reading of "rim": repeats to 0.02 mm and reproduces to 0.01 mm, in steps of 0.01 mm, judged 0.02 mm within its limits, takes 1.5 s; read by 3 appraisers',
  ]);
});

// T11: 100 mm x 0.07 mm/m/°C x 5 °C.
it.each([
  ['5 °C', '0.035 mm larger for being 5 °C warmer than 20 °C'],
  ['-5 °C', '0.035 mm smaller for being 5 °C colder than 20 °C'],
])('says what a reading warm by %s is off by', (warm, expected) => {
  expect(
    told('every: 1', {
      rim: 'expands: 0.07 mm/m/°C',
      reading: `repeatability: 0 mm, warm-by: ${warm}`,
    }),
  ).toEqual([`"gauging": reading of "rim": ${expected}`]);
});
