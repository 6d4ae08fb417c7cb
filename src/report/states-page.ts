import type { Comparison } from '../experiment/comparison.ts';
import type { State } from '../line/state.ts';
import { stateCharts } from './charts.ts';
import { escapeHtml } from './escape.ts';
import { percent } from './format.ts';
import { heading, scrolling, section } from './html.ts';
import { occurring, STATE_LOOKS } from './state-words.ts';

/** With hyphens at which no line breaks. */
function unbroken(text: string): string {
  return text.replaceAll('-', '\u2011');
}

function stateTable(comparison: Comparison, policy: string, index: number, states: readonly State[]): string {
  const rows = Object.entries(comparison.stateShares[policy]!).map(
    ([station, shares]) =>
      `<tr><th scope="row">${escapeHtml(station)}</th>` +
      `${states.map((state) => `<td>${percent(shares[state])}</td>`).join('')}</tr>`,
  );
  const head =
    heading('station') + states.map((state) => heading(unbroken(STATE_LOOKS[state].word))).join('');
  const caption = `${escapeHtml(policy)} <span>(mean share of the counted time, %)</span>`;
  return scrolling(`states-${index + 1}`, caption, head, rows);
}

/** The shares of their time that the stations spent in each state, by policy. */
export function statesSection(comparison: Comparison): string {
  const states = occurring(Object.values(comparison.stateShares));
  const legend = states.map((state) => {
    const { word, letter, colour, ink } = STATE_LOOKS[state];
    return `<li><b style="background:${colour};color:${ink}">${letter}</b>${word}</li>`;
  });
  const figures = stateCharts(comparison).map(
    ({ policy, svg }) => `<figure><figcaption>${escapeHtml(policy)}</figcaption>${svg}</figure>`,
  );
  const tables = comparison.policies.map((policy, i) => stateTable(comparison, policy, i, states));
  const body = `<ul class="legend" aria-label="States, in the order of the bars">${legend.join('')}</ul>
<div class="panels">
${figures.join('\n')}
</div>
<details>
<summary>The same as tables</summary>
${tables.join('\n')}
</details>`;
  return section('states', 'What the stations did', body);
}
