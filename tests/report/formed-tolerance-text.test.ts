import { describe, expect, it } from 'vitest';
import { stationTexts } from '../../src/report/station-text.ts';
import { gaugedCell, small } from '../line/small-line.ts';

const told = (rim: string) => stationTexts(small('1 h', gaugedCell({ rim })));

// T10, common practice of the trade: 0.020 in (0.508 mm) over the first 12 in; thermoform.com and mayfieldplastics.com, tolerance pages.
describe('a formed dimension', () => {
  it('closer than formed parts are commonly held to is told, with what it may need', () => {
    expect(told('tolerance: 0.25 mm, mould: 100.4 mm')).toEqual([
      '"forming": "rim" has a tolerance of 0.25 mm, closer than the 0.508 mm that formed parts of 100 mm are commonly ' +
        'held to: it may need trimming, or gauging of every part',
    ]);
  });

  // At 30 in, 0.038 in and 0.056 in: 0.9652 mm and 1.4224 mm.
  it('longer than 12 in is told both practices', () => {
    const long = gaugedCell({ rim: 'tolerance: 0.9 mm, mould: 765 mm' }).replace('100 mm', '30 in');
    expect(stationTexts(small('1 h', long))[0]).toContain(
      '"rim" has a tolerance of 0.9 mm, closer than the 0.965 to 1.42 mm that formed parts of 762 mm',
    );
  });

  it.each([
    'tolerance: 0.02 in, mould: 100.4 mm',
    'tolerance: 0.6 mm, mould: 100.4 mm',
    'tolerance: 0.25 mm',
    'mould: 100.4 mm',
  ])('with %s is not', (rim) => {
    expect(told(rim)).toEqual([]);
  });
});
