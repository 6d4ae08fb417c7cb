import { escapeHtml } from './escape.ts';

/** A part of the report; its name stands in the margin and names the landmark. */
export function section(id: string, name: string, body: string): string {
  return `<section id="${id}" aria-labelledby="${id}-name">
<h2 id="${id}-name">${escapeHtml(name)}</h2>
<div>
${body}
</div>
</section>`;
}

/** Fewer parts than these are found without a list of them. */
const MANY = 10;

/** Links to the parts of a long page; empty where it is short. */
export function contentsOf(sections: string): string {
  const parts = [...sections.matchAll(/^<section id="([^"]+)"[^>]*>\n<h2[^>]*>(.*)<\/h2>$/gm)];
  if (parts.length < MANY) return '';
  const links = parts.map(([, id, name]) => `<li><a href="#${id}">${name}</a></li>`);
  return `<nav aria-label="Parts of this page"><ul>\n${links.join('\n')}\n</ul></nav>\n`;
}

/** Data that stand in a page and are not run: no end of the element, no comment can begin in them. */
export const dataElement = (id: string, data: unknown): string =>
  `<script type="application/json" id="${id}">${JSON.stringify(data).replaceAll('<', '\\u003c')}</script>`;

/** A table in a box of its own that scrolls sideways, by keyboard too. */
export function scrolling(id: string, caption: string, head: string, rows: readonly string[]): string {
  return `<div class="scroll" role="region" tabindex="0" aria-labelledby="${id}">
<table>
<caption><div id="${id}">${caption}</div></caption>
<thead><tr>${head}</tr></thead>
<tbody>
${rows.join('\n')}
</tbody>
</table>
</div>`;
}

export function heading(text: string, kind = ''): string {
  return `<th scope="col"${kind && ` class="${kind}"`}>${escapeHtml(text)}</th>`;
}

/** The cell of a verdict; what tells more than its word may break into lines. */
export function verdictCell(word: string, whole: string): string {
  const kind =
    word === 'better' || word === 'worse' ? ` ${word}` : whole.length > word.length ? ' names' : '';
  return `<td class="word${kind}">${escapeHtml(whole)}</td>`;
}

export const warning = (text: string): string =>
  `<p class="warning"><strong>Warning:</strong> ${escapeHtml(text)}</p>`;
