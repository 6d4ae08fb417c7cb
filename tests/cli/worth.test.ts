import { expect, it } from 'vitest';
import { worthOf } from '../../src/cli/worth.ts';
import { MEASURES } from '../../src/line/measures.ts';

it.each([
  ['0.5 /h', 'throughput_per_h', 0.5],
  ['0.5/h', 'throughput_per_h', 0.5],
  ['.5 good /h', 'throughput_per_h', 0.5],
  ['throughput=2 /h', 'throughput_per_h', 2],
  ['throughput_per_h = 2 good /h', 'throughput_per_h', 2],
  // 60 s a minute, 100 % the whole.
  ['0.5 min', 'lead_time_s', 30],
  ['scrap rate=0.5 %', 'scrap_rate', 0.005],
  ['scrap_rate=5e-1 %', 'scrap_rate', 0.005],
  ['work in progress=3 parts', 'work_in_progress_parts', 3],
  ['0.02 money', 'stock_cost_per_good', 0.02],
] as const)('takes "%s" for %s in its keyed unit', (text, key, value) => {
  const [found, ...more] = worthOf([text]);
  expect(more).toEqual([]);
  expect(found![0]).toBe(key);
  expect(found![1]).toBeCloseTo(value, 12);
});

it('takes every measure by name and by key, in the unit that it is shown in', () => {
  for (const by of ['name', 'key'] as const)
    expect([...worthOf(MEASURES.map((measure) => `${measure[by]}=1 ${measure.shown.unit}`)).keys()]).toEqual(
      MEASURES.map(({ key }) => key),
    );
});

it('takes none for nothing', () => {
  expect(worthOf(undefined).size).toBe(0);
  expect(worthOf([]).size).toBe(0);
});

it.each([
  ['', 'names no amount; it expects an amount with its unit, such as "0.5 /h"'],
  ['much', '"much" names no amount'],
  ['scrap rate=', 'names no amount'],
  ['scrap rate', 'names no amount'],
  ['0.5', '"0.5" has no unit; it expects an amount with its unit'],
  ['scrap rate=0.5', 'write "scrap rate=0.5 %"'],
  [
    '0.5 %',
    'may be of scrap rate, fit rate, rework rate, turned away, orders on time, orders filled at once; name',
  ],
  ['3 parts', 'may be of work in progress, finished goods; name one, such as "work in progress=3 parts"'],
  ['0.5 /hh', 'knows no unit "/hh"; did you mean "/h"?'],
  ['0.5 furlongs', 'knows no unit "furlongs"; known here: /h, %, parts, min, money'],
  ['lead time=30 s', 'is not in the unit of lead time; write "lead time=30 min"'],
  ['throughput=5 %', 'is not in the unit of throughput; write "throughput=5 /h"'],
  ['scrap rat=1 %', '"scrap rat" is no measure; did you mean "scrap rate"?'],
  ['=1 %', '"" is no measure; known here: throughput, scrap rate,'],
  ['quality of life=1 %', '"quality of life" is no measure; known here: throughput, scrap rate,'],
  ['0 /h', 'is not above zero; without it every difference of throughput is worth having'],
  ['-1 /h', 'is not above zero'],
  ['\u22121 /h', 'is not above zero'],
  ['scrap rate=0.0 %', 'is not above zero'],
  ['1e999 /h', 'is not above zero'],
])('refuses "%s"', (text, told) => {
  expect(() => worthOf([text])).toThrow(told);
});

it('refuses the same measure twice, by whatever name', () => {
  expect(() => worthOf(['1 /h', 'throughput_per_h=2 /h'])).toThrow(
    '--worth is given twice for throughput; once is enough',
  );
});
