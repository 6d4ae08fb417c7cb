import { expect, it } from 'vitest';
import { COST_KINDS, costRows } from '../../src/experiment/cost-rows.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import { costsSection } from '../../src/report/costs-page.ts';
import { small } from '../line/small-line.ts';

const body = `
stock:
  blank: { on-hand: 3, reorder-at: 1, order: 2, lead-time: 25 s, price: 4, per-order: 3, holding: 864, per-short: 5 }
stations:
  only: { does: work, takes: blank, cycle: 10 s, to: good }`;

it('the parts of the cost add up to the measure of it, and those worked out by hand stand in the table', () => {
  // Pieces are taken at 0, 10, 20, 35, 45, 60, 70 and 85 s; seven parts are good. Of orders placed at 10, 35, 60 and 85 s
  // three came, at 35, 60 and 85 s: six pieces at 4.
  const outcome = simulate(small('85 s', body), 'carry on', 1);
  const rows = costRows(['carry on'], [outcome]);
  const [{ costs }] = rows as [(typeof rows)[number]];
  expect(costs.reduce((all, cost) => all + cost, 0)).toBeCloseTo(outcome.measures.stock_cost_per_good!, 12);
  expect(costs[COST_KINDS.indexOf('purchase_cost')]).toBeCloseTo((6 * 4) / 7, 12);
  expect(costs[COST_KINDS.indexOf('expedite_cost')]).toBe(0);
  const html = costsSection(rows);
  expect(html).toContain('<td>3.429</td>');
  expect(html).not.toContain('speeding up');
});

it('is left out where no stock names a price', () => {
  const free = body.replace(/, price.*\}/, ' }');
  expect(costsSection(costRows(['carry on'], [simulate(small('85 s', free), 'carry on', 1)]))).toBe('');
});
