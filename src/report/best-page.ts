import type { Comparison, MeasureComparison } from '../experiment/comparison.ts';
import { headingOf } from './cells.ts';
import { escapeHtml } from './escape.ts';
import { formatOf } from './format.ts';
import { heading, scrolling, section } from './html.ts';
import { listedNames } from './words.ts';

function standings({ best }: MeasureComparison): { sure: string; open: string } {
  const names = best.filter(({ mayBeBest }) => mayBeBest).map(({ policy }) => policy);
  if (names.length === 1) return { sure: names[0]!, open: '' };
  return { sure: '', open: names.length === best.length ? 'any of them' : listedNames(names) };
}

function summary(compared: readonly MeasureComparison[]): string {
  const rows = compared.map((one) => {
    const { sure, open } = standings(one);
    return (
      `<tr><th scope="row">${escapeHtml(one.measure.name)}</th>` +
      `<td class="word names">${escapeHtml(sure)}</td><td class="word names">${escapeHtml(open)}</td></tr>`
    );
  });
  const head = heading('measure') + heading('surely best', 'word') + heading('may be best', 'word');
  return scrolling('table-best', 'Who is best, by measure', head, rows);
}

function ahead({ measure, best }: MeasureComparison): string {
  const rows = best.map(({ difference }) => ({ estimate: difference, difference }));
  const format = formatOf({ measure, rows });
  const lines = best.map(({ policy, difference, mayBeBest, best: surely }) => {
    const word = surely ? 'surely best' : mayBeBest ? 'may be best' : 'not best';
    return (
      `<tr><th scope="row">${escapeHtml(policy)}</th><td class="word">${word}</td>` +
      `<td>${format.signed(difference.value)}</td><td>${format.interval(difference)}</td></tr>`
    );
  });
  const head =
    heading('policy') +
    heading('standing', 'word') +
    heading(`difference to the best other, ${format.differenceUnit}`) +
    heading('its interval');
  return scrolling(
    `best-${measure.key}`,
    `${escapeHtml(headingOf({ measure }))} <span>(beside the best of the others)</span>`,
    head,
    lines,
  );
}

/** Who may be best in each measure; empty where there are no more than two to choose among, of which the verdict tells. */
export function bestSection({ measures }: Comparison): string {
  const compared = measures.filter(({ best }) => best.length > 2);
  if (compared.length === 0) return '';
  const fewer = compared.flatMap(({ measure, best }) => {
    const runs = best[0]!.difference.runs;
    return measures.some(({ rows }) => rows.some(({ estimate }) => estimate.runs > runs))
      ? [
          `<p class="note">${escapeHtml(measure.name)}: by the ${runs} seeds under which every policy gave a value.</p>`,
        ]
      : [];
  });
  const body = [
    summary(compared),
    '<p class="note">An interval that ends at zero says on which side of the best other policy this one is.</p>',
    ...fewer,
    `<details>\n<summary>By how much</summary>\n${compared.map(ahead).join('\n')}\n</details>`,
  ];
  return section('best', 'Beside the best', body.join('\n'));
}
