import { parseHTML } from 'linkedom';
import { expect, it } from 'vitest';
import { compare } from '../../src/experiment/comparison.ts';
import { STOCK_MEASURES, type StockMeasures } from '../../src/line/supply/stock-measures.ts';
import { widthOf } from '../../src/report/columns.ts';
import { stockRows } from '../../src/report/stock-rows.ts';
import { stocksSection } from '../../src/report/stocks-page.ts';
import { singleText } from '../../src/report/terminal.ts';
import { outcome } from './fake.ts';

const measures = (given: Partial<StockMeasures>, other: number | null = 0): StockMeasures => ({
  ...(Object.fromEntries(STOCK_MEASURES.map(({ key }) => [key, other])) as StockMeasures),
  ...given,
});
const PLAIN = { title: 'T', colour: false, width: 80 };

it('shows what every stock has, and the rest where some stock has it', () => {
  const headings = (stocks: Record<string, StockMeasures>) =>
    stockRows(stocks).columns.map(({ heading }) => heading.replace('\n', ' '));
  const few = headings({ a: measures({}) });
  expect(few).not.toContain('too old');
  expect(headings({ a: measures({}), b: measures({ expired_pieces: 2 }) })).toEqual([...few, 'too old']);
});

it('writes shares in percent, money with two decimals and no value as a dash', () => {
  const { columns } = stockRows({
    a: measures({ fill_rate: 0.954, holding_cost: 3.456, cycle_service_level: null }),
  });
  const cells = Object.fromEntries(
    columns.map(({ heading, cells: [cell] }) => [heading.replace('\n', ' '), cell]),
  );
  expect(cells).toMatchObject({
    'filled at once, %': '95.4',
    'holding cost': '3.46',
    'cycles not short, %': '\u2013',
  });
});

it('shows beside the fill rate what theory says of it, where it says anything', () => {
  const stocks = { a: measures({ fill_rate: 0.9 }), b: measures({ fill_rate: 0.8 }) };
  const estimate = (stock: string, fill: number | null) =>
    ({ stock, demand: 1, failures: 0, fill, assumes: null }) as const;
  const of = (fill: number | null) =>
    stockRows(stocks, { a: estimate('a', fill), b: estimate('b', null) }).columns.map(
      ({ heading, cells }) => [heading, cells],
    );
  const beside = of(0.912);
  const at = beside.findIndex(([heading]) => heading === 'filled\nat once, %');
  expect(beside[at + 1]).toEqual(['by\ntheory, %', ['91.2', '\u2013']]);
  expect(of(null)).toHaveLength(beside.length - 1);
});

it('stands on the page of a comparison, a table for each stock and a row for each policy', () => {
  const runs = ['a', 'b'].map((policy) => ({
    ...outcome(policy, 1),
    stocks: { 'a <frame>': measures({ fill_rate: policy === 'a' ? 0.75 : 0.5 }) },
  }));
  const estimate = { stock: 'a <frame>', demand: 1, failures: 0, fill: 0.8125, assumes: null } as const;
  const html = stocksSection(compare(['a', 'b'], runs), { b: { 'a <frame>': estimate } });
  const rows = [...parseHTML(html).document.querySelectorAll('tbody tr')].map((row) => row.textContent);
  expect(rows).toHaveLength(2);
  expect(rows[0]).toMatch(/^a.*75\.0\u2013/);
  expect(rows[1]).toMatch(/^b.*50\.081\.3/);
  expect(html).toContain('a &lt;frame&gt;');
  expect(stocksSection(compare(['a'], [outcome('a', 1)]))).toBe('');
});

it('stands below what the stations did, the mean over the runs that give a value, within 80 columns', () => {
  const runs = [0.4, null].map((fill_rate, i) => ({
    ...outcome('a', i + 1),
    stocks: {
      frame: measures({ fill_rate, stock_outs: i }, 1234.5),
      'a stock with a very long name indeed': measures({}),
    },
  }));
  const text = singleText(compare(['a'], runs), PLAIN);
  expect(text).toMatch(/^how the limited stocks fared, mean of a run$/m);
  expect(text).toMatch(/^frame +123450\.0 +0\.5 +40\.0/m);
  expect(Math.max(...text.split('\n').map(widthOf))).toBeLessThanOrEqual(80);
  expect(singleText(compare(['a'], [outcome('a', 1)]), PLAIN)).not.toContain('stocks fared');
});
