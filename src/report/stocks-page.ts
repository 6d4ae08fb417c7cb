import type { Comparison } from '../experiment/comparison.ts';
import type { EstimatedStocks } from '../experiment/stock-estimates.ts';
import { escapeHtml } from './escape.ts';
import { heading, scrolling, section } from './html.ts';
import { stockRows } from './stock-rows.ts';

/** How one stock fared, a row a policy. */
function table(
  { policies, stocks }: Comparison,
  name: string,
  index: number,
  estimated: EstimatedStocks,
): string {
  const of = <T>(one: (policy: string) => T | undefined) =>
    Object.fromEntries(
      policies.flatMap((policy) => {
        const value = one(policy);
        return value === undefined ? [] : [[policy, value]];
      }),
    ) as Record<string, T>;
  const { columns } = stockRows(
    of((policy) => stocks[policy]![name]),
    of((policy) => estimated[policy]?.[name]),
  );
  const rows = policies.map((policy, row) => {
    const cells = columns.map(({ cells }) => `<td>${cells[row]}</td>`);
    return `<tr><th scope="row">${escapeHtml(policy)}</th>${cells.join('')}</tr>`;
  });
  const words = (text: string) => text.replaceAll('\n', ' ');
  const head = heading('policy') + columns.map((column) => heading(words(column.heading))).join('');
  const caption = `${escapeHtml(name)} <span>(mean of a run)</span>`;
  return scrolling(`stock-${index + 1}`, caption, head, rows);
}

/** How the limited stocks fared under each policy; nothing where there are none. */
export function stocksSection(comparison: Comparison, estimated: EstimatedStocks = {}): string {
  const names = Object.keys(comparison.stocks[comparison.baseline] ?? {});
  if (names.length === 0) return '';
  const tables = names.map((name, index) => table(comparison, name, index, estimated));
  return section('stocks', 'How the stocks fared', tables.join('\n'));
}
