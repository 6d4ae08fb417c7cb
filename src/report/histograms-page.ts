import type { Looked, Sizes } from '../experiment/looked.ts';
import { escapeHtml } from './escape.ts';
import { fixed, percent } from './format.ts';
import { heading, scrolling, section } from './html.ts';
import { lanesChart } from './lanes.ts';
import { counted } from './words.ts';

/** Bins without a value beside those that have one, so that the picture does not end at its curve. */
const AIR = 2;

const WORDS = {
  dimension: { what: 'as made', below: 'below the lower limit, %', above: 'above the upper limit, %' },
  clearance: { what: 'clearance', below: 'too tight, %', above: 'too loose, %' },
} as const;

/** The bins to draw: from the first to the last that any policy has a value in, the limits among them. */
function drawnBins({ rows, limits, from, width }: Sizes): readonly [number, number] {
  const bins = rows[0]!.counts.length;
  const used = Array.from({ length: bins }, (_, bin) => bin).filter((bin) =>
    rows.some(({ counts }) => counts[bin]! > 0),
  );
  const place = (value: number) => Math.round((value - from) / width);
  const least = Math.min(...used, place(limits.lower)) - AIR;
  const most = Math.max(...used, place(limits.upper) - 1) + AIR;
  return [Math.max(0, least), Math.min(bins - 1, most)];
}

/** A size, mm, to a nanometre: without what the sums of limits leave behind. */
const size = (mm: number): string => String(Number(mm.toFixed(6)));
const share = (part: number, all: number): string => (all > 0 ? percent(part / all) : '\u2013');

/** A lane for each policy: how sizes lie about their limits. */
export function sizesChart(sizes: Sizes): string {
  const { of, kind, limits, from, width, rows } = sizes;
  const [first, last] = drawnBins(sizes);
  const shares = rows.map(({ counts, counted: all }) =>
    counts.map((count) => (all > 0 ? count / all : 0)).slice(first, last + 1),
  );
  const told = rows.map(
    (row) =>
      `${row.policy}: ${share(row.underLower, row.counted)} % below, ${share(row.overUpper, row.counted)} % above`,
  );
  return lanesChart({
    ...{ kind: 'sizes', label: 'mm', curve: 'step' },
    told: `${of}, ${WORDS[kind].what}, limits ${size(limits.lower)} and ${size(limits.upper)} mm. Outside them: ${told.join('; ')}.`,
    domain: [from + first * width, from + (last + 1) * width],
    top: Math.max(...shares.flat(), Number.MIN_VALUE),
    lanes: rows.map(({ policy }, i) => ({
      name: policy,
      points: shares[i]!.map((height, bin) => ({ x: from + (first + bin + 0.5) * width, height })),
    })),
    rules: [limits.lower, limits.upper],
  });
}

function table({ of, kind, rows }: Sizes, index: number): string {
  const { what, below, above } = WORDS[kind];
  const cells = rows.map((row) => {
    const beyond = row.below + row.above;
    const all = row.counted;
    const numbers = [
      share(row.underLower, all),
      share(row.overUpper, all),
      fixed(all, 0),
      share(beyond, all),
    ];
    return `<tr><th scope="row">${escapeHtml(row.policy)}</th>${numbers.map((text) => `<td>${text}</td>`).join('')}</tr>`;
  });
  const head = ['policy', below, above, 'number', 'beyond the scale, %']
    .map((text) => heading(text))
    .join('');
  return scrolling(`sizes-${index + 1}`, `${escapeHtml(of)} <span>(${what})</span>`, head, cells);
}

function figure(sizes: Sizes): string {
  const { of, kind, limits } = sizes;
  const { what } = WORDS[kind];
  const caption = `${escapeHtml(of)} <span>(${what}, limits ${size(limits.lower)} and ${size(limits.upper)} mm)</span>`;
  return `<figure><figcaption>${caption}</figcaption>${sizesChart(sizes)}</figure>`;
}

/** How dimensions and clearances lay about their limits; nothing where none has any. */
export function histogramsSection({ seeds, sizes }: Looked): string {
  if (sizes.length === 0) return '';
  const body = [
    '<p class="note">These are true sizes, which only a simulation knows: policies go by readings. Dimensions are counted as ' +
      'they are made, before anything is reworked or sorted out; clearances at the first attempt to assemble, hole less ' +
      'shaft. Dashed rules are the limits. The higher the curve, the larger the share of parts of that size; each ' +
      `picture has one scale for all its policies. Counted in ${counted(seeds, 'run')} of each policy.</p>`,
    `<div class="panels">\n${sizes.map(figure).join('\n')}\n</div>`,
    `<details>\n<summary>The same as tables</summary>\n${sizes.map(table).join('\n')}\n</details>`,
  ];
  return section('sizes', 'Dimensions and fits', body.join('\n'));
}
