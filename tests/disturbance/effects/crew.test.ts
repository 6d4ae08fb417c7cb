import { describe, expect, it } from 'vitest';
import { ran, seconds, small } from '../../line/small-line.ts';
import { disturbed, oneStation } from '../disturbed-line.ts';

const served = (number: number) =>
  `${oneStation('breakdowns: { jam: { every: 100 s, counted: working, repair: 20 s, cycle: resumes, crew: fitter } }')}crew:
  fitter: { number: ${number} }
`;
const spent = (body: string) => seconds(ran(small('200 s', body)), 'only', 200);
const away = (at: string, lasts: string) =>
  `  gone: { disturbs: crew, crew: fitter, away: 1, at: ${at}, for: ${lasts} }`;

describe('a crew some of whom are away', () => {
  it('makes repairs wait until they are back', () => {
    // Fails at 100; the fitter is back at 150 and repairs until 170.
    expect(spent(disturbed(served(1), away('90 s', '60 s')))).toEqual({
      working: 130,
      awaiting_technician: 50,
      down: 20,
    });
    expect(spent(served(1))).toEqual({ working: 180, down: 20 });
  });

  it('lets who is at work finish first', () => {
    expect(spent(disturbed(served(1), away('110 s', '60 s')))).toEqual({ working: 180, down: 20 });
  });

  it('serves with those who are there', () => {
    expect(spent(disturbed(served(2), away('90 s', '60 s')))).toEqual({ working: 180, down: 20 });
  });
});
