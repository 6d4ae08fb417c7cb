import type { Comparison } from '../experiment/comparison.ts';
import type { EstimatedStocks } from '../experiment/stock-estimates.ts';
import { escapeHtml } from './escape.ts';
import { heading, scrolling, section } from './html.ts';
import { stockRows } from './stock-rows.ts';

type Columns = ReturnType<typeof stockRows>['columns'];

/** What is told of one stock, a row a policy. */
function columnsOf({ policies, stocks }: Comparison, name: string, estimated: EstimatedStocks): Columns {
  const of = <T>(one: (policy: string) => T | undefined) =>
    Object.fromEntries(
      policies.flatMap((policy) => {
        const value = one(policy);
        return value === undefined ? [] : [[policy, value]];
      }),
    ) as Record<string, T>;
  return stockRows(
    of((policy) => stocks[policy]![name]),
    of((policy) => estimated[policy]?.[name]),
  ).columns;
}

const words = ({ heading: text }: Columns[number]) => text.replace('-\n', '').replaceAll('\n', ' ');

function table(
  columns: Columns,
  name: string,
  { index, policies }: { index: number; policies: readonly string[] },
): string {
  const rows = policies.map((policy, row) => {
    const cells = columns.map(({ cells }) => `<td>${cells[row]}</td>`);
    return `<tr><th scope="row">${escapeHtml(policy)}</th>${cells.join('')}</tr>`;
  });
  const head = heading('policy') + columns.map((column) => heading(words(column))).join('');
  const caption = `${escapeHtml(name)} <span>(mean of a run)</span>`;
  return scrolling(`stock-${index + 1}`, caption, head, rows);
}

/** How the limited stocks fared under each policy; nothing where there are none. */
export function stocksSection(comparison: Comparison, estimated: EstimatedStocks = {}): string {
  const names = Object.keys(comparison.stocks[comparison.baseline] ?? {});
  if (names.length === 0) return '';
  const all = names.map((name) => columnsOf(comparison, name, estimated));
  const { policies } = comparison;
  const tables = all.map((columns, index) => table(columns, names[index]!, { index, policies }));
  const meanings = new Map(all.flat().map((column) => [words(column), column.meaning]));
  const terms = [...meanings].map(
    ([word, meaning]) =>
      `<dt>${escapeHtml(word)}</dt><dd>${escapeHtml(`${meaning[0]!.toUpperCase()}${meaning.slice(1)}.`)}</dd>`,
  );
  const definitions = `<details>\n<summary>What the columns are</summary>\n<dl>${terms.join('\n')}</dl>\n</details>`;
  return section('stocks', 'How the stocks fared', [...tables, definitions].join('\n'));
}
