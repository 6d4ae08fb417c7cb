import { COST_KINDS, type CostRow } from '../experiment/cost-rows.ts';
import { escapeHtml } from './escape.ts';
import { fixed } from './format.ts';
import { heading, scrolling, section } from './html.ts';

const HEADINGS: Readonly<Record<(typeof COST_KINDS)[number], string>> = {
  purchase_cost: 'pieces bought',
  ordering_cost: 'orders placed',
  holding_cost: 'holding',
  expedite_cost: 'speeding up',
  shortage_cost: 'shortage',
};

const sum = (costs: readonly number[]) => costs.reduce((all, cost) => all + cost, 0);

/** What the stocks cost, part by part; nothing where none names a price. */
export function costsSection(rows: readonly CostRow[]): string {
  if (rows.length === 0) return '';
  const kinds = COST_KINDS.flatMap((_, k) => (rows.some(({ costs }) => costs[k]! > 0) ? [k] : []));
  const cells = rows.map(({ policy, costs }) => {
    const numbers = [sum(costs), ...kinds.map((k) => costs[k]!)].map((cost) => `<td>${fixed(cost, 3)}</td>`);
    return `<tr><th scope="row">${escapeHtml(policy)}</th>${numbers.join('')}</tr>`;
  });
  const head = ['policy', 'in all', ...kinds.map((k) => HEADINGS[COST_KINDS[k]!])].map((text) =>
    heading(text),
  );
  const caption =
    'Cost of stocks <span>(for each good assembly, mean of a run, in the money of the scenario)</span>';
  const note =
    '<p class="note">Only what stocks name a price for is counted. Work, energy, machines, tools, technicians, rework, scrap ' +
    'beyond the pieces in it, and orders that were late cost nothing here, so a policy that is cheap in this table need not be cheap.</p>';
  return section(
    'costs',
    'What the stocks cost',
    `${note}\n${scrolling('table-costs', caption, head.join(''), cells)}`,
  );
}
