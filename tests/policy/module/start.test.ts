import { describe, expect, it } from 'vitest';
import { gaugedCell, ran, small } from '../../line/small-line.ts';
import { ranWith } from './run-code.ts';

const scenario = small('100 s', gaugedCell());

describe('the clock of a policy as code', () => {
  it('calls at the time it is asked to, and stands at it then', () => {
    const seen: number[] = [];
    ranWith(scenario, (cell) => {
      seen.push(cell.now);
      cell.after(12.5, () => {
        seen.push(cell.now);
        cell.after(0, () => seen.push(cell.now));
        cell.after(50, () => seen.push(cell.now));
      });
    });
    expect(seen).toEqual([0, 12.5, 12.5, 62.5]);
  });

  it.each([
    [Number.NaN, 'NaN'],
    [Number.POSITIVE_INFINITY, 'Infinity'],
    [-1, '-1'],
    ['5 s' as never as number, '"5 s"'],
    [undefined as never as number, 'undefined'],
  ])('refuses a delay of %s', (delay, shown) => {
    expect(() => ranWith(scenario, (cell) => cell.after(delay, () => {}))).toThrow(
      `: after: ${shown} is not a number from 0`,
    );
  });

  it('refuses what cannot be called', () => {
    expect(() => ranWith(scenario, (cell) => cell.after(1, 'then' as never))).toThrow(
      ': after: "then" is no function',
    );
  });

  it('tells when it went wrong', () => {
    const late = () =>
      ranWith(scenario, (cell) =>
        cell.after(30, () => {
          throw new Error('no more');
        }),
      );
    expect(late).toThrow(/^at 30 s its module code\.ts threw.*: no more$/);
  });
});

describe('the chance of a policy as code', () => {
  const draws = (seed: number, ask = 'same') => {
    const drawn: number[] = [];
    ranWith(
      scenario,
      (cell) => {
        const [one, other, third] = [cell.random('same'), cell.random('same'), cell.random(ask)];
        const time = cell.times({ distribution: 'uniform', low: '1 min', high: '2 min' }, 'same');
        drawn.push(one(), one(), other(), other(), third(), time());
      },
      seed,
    );
    return drawn;
  };

  it('is the same under the same seed, and another under another', () => {
    expect(draws(1)).toEqual(draws(1));
    for (const [i, value] of draws(1).entries()) expect(value).not.toBe(draws(2)[i]);
  });

  it('has a stream of its own each time it is asked for, and lies within its bounds', () => {
    const drawn = draws(3, 'another');
    expect(new Set(drawn).size).toBe(drawn.length);
    for (const value of drawn.slice(0, 5)) expect(value >= 0 && value < 1).toBe(true);
    expect(drawn[5]! >= 60 && drawn[5]! <= 120).toBe(true);
  });

  it('leaves the luck of the line as it was', () => {
    const noisy = small('1000 s', gaugedCell({ rim: 'own-sd: 0.5 mm', reading: 'repeatability: 0.1 mm' }));
    const asks = ranWith(noisy, (cell) => void cell.random('idle')());
    expect(asks).toEqual(ran(noisy));
  });

  it('refuses a law that is none, and a purpose that is none', () => {
    expect(() => ranWith(scenario, (cell) => cell.times({ distribution: 'gama' }, 'a'))).toThrow(
      'did you mean "gamma"?',
    );
    expect(() => ranWith(scenario, (cell) => cell.times('12', 'a'))).toThrow('expected');
    expect(() => ranWith(scenario, (cell) => cell.random(''))).toThrow(': random: "" is no text');
  });
});

it('a policy as code that asks for nothing changes nothing', () => {
  const noisy = small('1000 s', gaugedCell({ rim: 'own-sd: 0.5 mm' }));
  expect(ranWith(noisy, () => {})).toEqual(ran(noisy));
});
