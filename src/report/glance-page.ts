import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import type { Verdict } from '../experiment/paired.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { cellsOf, percentLevel } from './cells.ts';
import { escapeHtml } from './escape.ts';
import { type Format, formatOf } from './format.ts';
import { scrolling, section } from './html.ts';

const ALIKE: Verdict = 'no difference worth having';
const KINDS = new Set(['better', 'worse']);

/** `391.25 ± 22.75`, by the wider half where an interval was cut at what is possible. */
function spanned({ value, lower, upper }: Estimate, format: Format): string {
  if (lower === null || upper === null) return format.value(value);
  return `${format.value(value)}\u00a0±\u00a0${format.value(Math.max(upper - value, value - lower))}`;
}

/** The cells of one measure, in the order of the policies. */
function cellsOfMeasure(compared: MeasureComparison, comparison: Comparison): string[] {
  const format = formatOf(compared);
  return cellsOf(compared, comparison).map(({ policy, verdict }) => {
    const row = compared.rows.find((one) => one.policy === policy);
    if (!row) return '<td>–</td>';
    const kind = KINDS.has(verdict) ? verdict : 'note';
    const word = verdict === ALIKE ? 'no difference' : verdict;
    return `<td>${spanned(row.estimate, format)}<br><span class="${kind}">${word}</span></td>`;
  });
}

/** Every policy and every measure in one table, for who has one page's time; empty where there is nothing to compare. */
export function glanceSection(comparison: Comparison): string {
  const { policies, measures, baseline, seeds } = comparison;
  if (policies.length < 2) return '';
  const columns = measures.map((compared) => cellsOfMeasure(compared, comparison));
  const rows = policies.map(
    (policy, i) =>
      `<tr><th scope="row">${escapeHtml(policy)}</th>${columns.map((cells) => cells[i]).join('')}</tr>`,
  );
  const heads = measures.map(
    ({ measure }) =>
      `<th scope="col">${escapeHtml(measure.name)}, ${escapeHtml(measure.shown.unit)}<br>` +
      `<span>${measure.better} is better</span></th>`,
  );
  const what =
    seeds > 1
      ? `mean of ${seeds} seeds ± half of its ${percentLevel(LEVEL)} % interval; below it the verdict against ${baseline}, "no difference" being none worth having`
      : 'of one seed, which gives no interval';
  const caption = `Every policy, every measure <span>(${escapeHtml(what)})</span>`;
  const head = `<th scope="col">policy</th>${heads.join('')}`;
  return section('glance', 'At a glance', scrolling('table-glance', caption, head, rows));
}
