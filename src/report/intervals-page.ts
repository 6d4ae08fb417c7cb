import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import { percentLevel } from './cells.ts';
import { intervalCharts } from './charts.ts';
import { escapeHtml } from './escape.ts';
import { section } from './html.ts';

/** The means with their intervals, a chart for each measure. */
export function intervalsSection(comparison: Comparison): string {
  const charts = intervalCharts(comparison);
  const figures = comparison.measures.map(
    ({ measure }, i) =>
      `<figure><figcaption>${escapeHtml(measure.name)} ` +
      `<span>(${measure.better} is better)</span></figcaption>${charts[i]}</figure>`,
  );
  const baseline = escapeHtml(comparison.baseline);
  const key =
    `Dot: mean. Bar: its ${percentLevel(LEVEL)}\u00a0% interval, where there is one. ` +
    `Open dot and dotted rule: ${baseline}. The words are the verdicts on the paired differences in the tables; ` +
    'whether two bars overlap does not decide them.';
  const body = `<p class="note">${key}</p>\n<div class="panels">\n${figures.join('\n')}\n</div>`;
  return section('intervals', 'Intervals', body);
}
