import type { CauseRates, MisfitRates, ScrapRates } from '../experiment/cause-rates.ts';
import { causeCharts } from './causes-chart.ts';
import { escapeHtml } from './escape.ts';
import { fixed } from './format.ts';
import { heading, scrolling, section } from './html.ts';
import { CAUSES } from './trace/event-words.ts';

/** The chart shows so many of the most frequent causes; the table has all. */
const MOST_BARS = 8;

const rate = (value: number): string => fixed(value, 1);
const row = (name: string, cells: readonly string[]) =>
  `<tr><th scope="row">${escapeHtml(name)}</th>${cells.map((cell) => `<td>${cell}</td>`).join('')}</tr>`;
const perThousand = ({ rows }: ScrapRates) => rows.map((own) => own.perThousand);

/** The causes that scrapped most, over all policies, in the order of the line. */
export function foremost(causes: readonly ScrapRates[]): readonly ScrapRates[] {
  const sum = (of: ScrapRates) => perThousand(of).reduce((all, value) => all + value, 0);
  const chosen = new Set([...causes].sort((a, b) => sum(b) - sum(a)).slice(0, MOST_BARS));
  return causes.filter((of) => chosen.has(of));
}

function scrapTable(causes: readonly ScrapRates[]): string {
  const policies = causes[0]!.rows.map(({ policy }) => policy);
  const all = policies.map((_, p) => causes.reduce((sum, of) => sum + perThousand(of)[p]!, 0));
  const rows = [
    ...causes.map((of) => row(`${of.station}: ${CAUSES[of.cause]}`, perThousand(of).map(rate))),
    row('all causes', all.map(rate)),
  ];
  const caption = 'Scrapped <span>(parts of 1000 started, all runs together)</span>';
  const head = heading('station and cause') + policies.map((policy) => heading(policy)).join('');
  return scrolling('table-causes', caption, head, rows);
}

function misfitTable(pairs: readonly MisfitRates[]): string {
  const policies = pairs[0]!.rows.map(({ policy }) => policy);
  const rows = pairs.flatMap(({ station, hole, shaft, rows }) =>
    (['tight', 'loose'] as const).map((kind) =>
      row(
        `${station}: ${hole} on ${shaft}, too ${kind}`,
        rows.map((own) => rate(own[kind])),
      ),
    ),
  );
  const caption =
    'Attempts that did not fit, by the pair that was farthest outside its limits ' +
    '<span>(for 1000 parts started; a part may be tried again)</span>';
  const head = heading('pair') + policies.map((policy) => heading(policy)).join('');
  return scrolling('table-misfits', caption, head, rows);
}

/** Why parts were scrapped and did not fit; nothing where none was. */
export function causesSection({ scrapped, misfits }: CauseRates): string {
  if (scrapped.length + misfits.length === 0) return '';
  const shown = foremost(scrapped);
  const left = scrapped.length - shown.length;
  const figures = shown.length > 0 ? causeCharts(shown) : [];
  const body = [
    '<p class="note">Each scrapped part counts once, where and for what it was scrapped; a part that is sent back once too ' +
      'often counts by what sent it. These are totals without intervals: what differs between policies is decided by the ' +
      `measures above.${left > 0 ? ` The bars show the ${MOST_BARS} most frequent causes; the table has all.` : ''}</p>`,
    ...(figures.length > 0
      ? [
          `<div class="panels">\n${figures
            .map(({ policy, svg }) => `<figure><figcaption>${escapeHtml(policy)}</figcaption>${svg}</figure>`)
            .join('\n')}\n</div>`,
        ]
      : []),
    ...(scrapped.length > 0 ? [scrapTable(scrapped)] : []),
    ...(misfits.length > 0 ? [misfitTable(misfits)] : []),
  ];
  return section('causes', 'Why parts were lost', body.join('\n'));
}
