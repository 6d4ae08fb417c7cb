import type { CauseRates } from '../experiment/cause-rates.ts';
import { type Comparison, LEVEL, type MeasureComparison } from '../experiment/comparison.ts';
import type { CostRow } from '../experiment/cost-rows.ts';
import type { Looked } from '../experiment/looked.ts';
import type { Narrowed } from '../experiment/narrow.ts';
import type { Pilot } from '../experiment/pilot.ts';
import type { Recovered } from '../experiment/recovered.ts';
import type { Skew } from '../experiment/skew.ts';
import type { Spread } from '../experiment/spread.ts';
import type { EstimatedStocks } from '../experiment/stock-estimates.ts';
import type { TargetFound } from '../experiment/targets.ts';
import type { Twins } from '../experiment/twins.ts';
import type { State } from '../line/state.ts';
import { basisOf } from './basis.ts';
import { bestSection } from './best-page.ts';
import {
  withBoundMarked,
  withBoundMarkedInCauses,
  withBoundMarkedInLooked,
  withBoundMarkedInRows,
  withBoundMarkedInSpread,
  withBoundMarkedInTwins,
} from './bound-text.ts';
import { causesSection } from './causes-page.ts';
import { type Cells, cellsOf, percentLevel } from './cells.ts';
import { intervalCharts, stateCharts } from './charts.ts';
import { costsSection } from './costs-page.ts';
import { escapeHtml } from './escape.ts';
import { percent } from './format.ts';
import { histogramsSection } from './histograms-page.ts';
import { heading, scrolling, section, verdictCell } from './html.ts';
import { type Joined, joinedTexts, unfolded } from './joined.ts';
import { levelsSection } from './levels-page.ts';
import { notesOf } from './measure-notes.ts';
import { narrowedSection } from './narrowed-page.ts';
import { framed, type Origins, originList } from './page-frame.ts';
import { pairsSection } from './pairs-page.ts';
import { reading } from './reading-page.ts';
import { spreadTerms } from './reading-terms.ts';
import { recoveredSection } from './recovered-page.ts';
import { skewNotes } from './skew-text.ts';
import { spreadSection } from './spread-page.ts';
import { occurring, STATE_LOOKS } from './state-words.ts';
import { stocksSection } from './stocks-page.ts';
import { targetSection } from './target-page.ts';
import { twinsSection } from './twins-page.ts';
import { verdictSentences } from './verdict.ts';
import { warmUpSection } from './warm-up-page.ts';

/** What the runs were made from, enough to make them again. */
/** Where it comes from, without what was joined to the scenario. */
type Provenance = Omit<Origins, 'joined' | 'modules'> & Partial<Pick<Origins, 'modules'>>;

export interface PageSource {
  readonly comparison: Comparison;
  readonly twins?: Twins | undefined;
  readonly spread?: Spread | undefined;
  readonly targets?: readonly TargetFound[];
  /** What theory says of the stocks, by the names of the policies. */
  readonly estimated?: EstimatedStocks;
  /** Where there is a bound. */
  readonly recovered?: Recovered | undefined;
  readonly pilot?: Pilot | undefined;
  /** Where the runs stopped by the width of intervals. */
  readonly narrowed?: Narrowed | undefined;
  readonly causes?: CauseRates | undefined;
  readonly costs?: readonly CostRow[];
  readonly looked?: Looked | undefined;
  readonly title: string;
  /** What the scenario is, in words; blank lines part its paragraphs. */
  readonly about: string;
  readonly scenarioText: string;
  readonly joined?: readonly Joined[];
  readonly provenance: Provenance;
  readonly warnings?: readonly string[];
}

/** Its space does not break at the end of a line. */
const SHARE = `${percentLevel(LEVEL)}\u00a0%`;

function paragraphs(text: string): string {
  return text
    .split(/\n\s*\n/)
    .filter((part) => part.trim() !== '')
    .map((part) => `<p>${escapeHtml(part.trim())}</p>`)
    .join('\n');
}

/** With hyphens at which no line breaks. */
function unbroken(text: string): string {
  return text.replaceAll('-', '\u2011');
}

function measureCaption({ measure }: MeasureComparison): string {
  return (
    `${escapeHtml(measure.name)}, ${escapeHtml(measure.shown.unit)} ` +
    `<span>(${measure.better} is better): ${escapeHtml(measure.meaning)}</span>`
  );
}

const warning = (text: string) => `<p class="warning"><strong>Warning:</strong> ${escapeHtml(text)}</p>`;

function measureTable(
  compared: MeasureComparison,
  comparison: Comparison,
  skews: readonly Skew[] = [],
): string {
  const several = comparison.policies.length > 1;
  const plain = (cells: Cells) => [cells.mean, cells.interval];
  const paired = (cells: Cells) => [cells.difference, cells.differenceInterval];
  const rows = cellsOf(compared, comparison).map((cells) => {
    const numbers = several ? [...paired(cells), ...plain(cells)] : plain(cells);
    const row = numbers.map((text) => `<td>${escapeHtml(text)}</td>`).join('');
    // What decides stands first, so that a narrow screen shows it.
    const verdict = several ? verdictCell(cells.verdict, cells.whole) : '';
    return `<tr><th scope="row">${escapeHtml(cells.policy)}</th>${verdict}${row}</tr>`;
  });
  const head =
    heading('policy') +
    (several
      ? heading('verdict', 'word') + heading(`difference to ${comparison.baseline}`) + heading('its interval')
      : '') +
    heading('mean') +
    heading(`${SHARE} interval`);
  const notes = notesOf(compared, comparison).map((note) => `<p class="note">${escapeHtml(note)}</p>`);
  const doubts = skewNotes(skews, compared.measure.key).map(warning);
  const table = scrolling(`table-${compared.measure.key}`, measureCaption(compared), head, rows);
  return `<div class="measure">${[table, ...doubts, ...notes].join('\n')}</div>`;
}

function intervalFigures(comparison: Comparison): string {
  const charts = intervalCharts(comparison);
  const figures = comparison.measures.map(
    ({ measure }, i) =>
      `<figure><figcaption>${escapeHtml(measure.name)} ` +
      `<span>(${measure.better} is better)</span></figcaption>${charts[i]}</figure>`,
  );
  const baseline = escapeHtml(comparison.baseline);
  const key =
    `Dot: mean. Bar: its ${SHARE} interval, where there is one. ` +
    `Open dot and dotted rule: ${baseline}. The words are the verdicts on the paired differences in the tables; ` +
    'whether two bars overlap does not decide them.';
  return `<p class="note">${key}</p>\n<div class="panels">\n${figures.join('\n')}\n</div>`;
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

function stateFigures(comparison: Comparison): string {
  const states = occurring(Object.values(comparison.stateShares));
  const legend = states.map((state) => {
    const { word, letter, colour, ink } = STATE_LOOKS[state];
    return `<li><b style="background:${colour};color:${ink}">${letter}</b>${word}</li>`;
  });
  const figures = stateCharts(comparison).map(
    ({ policy, svg }) => `<figure><figcaption>${escapeHtml(policy)}</figcaption>${svg}</figure>`,
  );
  const tables = comparison.policies.map((policy, i) => stateTable(comparison, policy, i, states));
  return `<ul class="legend" aria-label="States, in the order of the bars">${legend.join('')}</ul>
<div class="panels">
${figures.join('\n')}
</div>
<details>
<summary>The same as tables</summary>
${tables.join('\n')}
</details>`;
}

/** How busy the crews were; empty where the line has none. */
function crewSection({ policies, crewShares }: Comparison): string {
  const crews = Object.keys(crewShares[policies[0]!]!);
  if (crews.length === 0) return '';
  const rows = policies.map(
    (policy) =>
      `<tr><th scope="row">${escapeHtml(policy)}</th>` +
      `${crews.map((crew) => `<td>${percent(crewShares[policy]![crew]!)}</td>`).join('')}</tr>`,
  );
  const head = heading('policy') + crews.map((crew) => heading(crew)).join('');
  const caption =
    'Busy <span>(mean share of the counted time that a member of the crew was at work or on the way to it, %; ' +
    'the hours off shift count as time, too)</span>';
  return section('crews', 'What the crews did', scrolling('table-crews', caption, head, rows));
}

function origin(provenance: Provenance, joined: readonly Joined[]): string {
  const { modules = [] } = provenance;
  return `${originList({ ...provenance, joined, modules })}
<p class="note">The scenario, ${modules.length > 0 ? 'the policy modules, ' : ''}the seeds and the version together decide every digit.</p>`;
}

/** The sentence as HTML, the policy it speaks of in bold. */
function withNameStrong(sentence: string, policies: readonly string[]): string {
  const name = policies.find((policy) => sentence.startsWith(`${policy} against `));
  if (name === undefined) return escapeHtml(sentence);
  return `<strong>${escapeHtml(name)}</strong>${escapeHtml(sentence.slice(name.length))}`;
}

/** One file with everything in it: no scripts, nothing fetched. The same comparison gives the same bytes. */
export function comparisonPage(source: PageSource): string {
  const { title, about, scenarioText, joined = [], provenance, recovered, warnings = [] } = source;
  const comparison = withBoundMarked(source.comparison);
  const twins = source.twins && withBoundMarkedInTwins(source.twins, source.comparison);
  // One run has no spread.
  const spread =
    source.spread && source.spread.seeds > 1
      ? withBoundMarkedInSpread(source.spread, source.comparison)
      : undefined;
  const looked = source.looked && withBoundMarkedInLooked(source.looked, source.comparison);
  const targets = withBoundMarkedInRows(source.targets ?? [], source.comparison);
  const sentences = verdictSentences(comparison).map(
    (text) => `<li>${withNameStrong(text, comparison.policies)}</li>`,
  );
  const verdict = `<ul class="verdict">
${sentences.join('\n')}
</ul>
<p class="note">${escapeHtml(basisOf(comparison, LEVEL))}</p>
${warnings.map(warning).join('\n')}`;
  const lookedAt = {
    sizes: looked ? `${histogramsSection(looked)}\n` : '',
    levels: looked ? `${levelsSection(looked)}\n` : '',
  };
  const costs = withBoundMarkedInRows([{ rows: source.costs ?? [] }], source.comparison)[0]!.rows;
  const lost = source.causes
    ? `${causesSection(withBoundMarkedInCauses(source.causes, source.comparison))}\n`
    : '';
  const several = comparison.policies.length > 1;
  const sections = `${section('verdict', 'Verdict', verdict)}
${targets.length > 0 ? `${targetSection(targets, comparison)}\n` : ''}${section('about', 'The scenario', `<div class="prose">${paragraphs([about, ...joinedTexts(joined)].join('\n\n'))}</div>`)}
${twins ? `${twinsSection(twins, comparison)}\n` : ''}${recovered ? `${recoveredSection(recovered)}\n` : ''}${section('intervals', 'Intervals', intervalFigures(comparison))}
${section('measures', 'Measures', comparison.measures.map((compared) => measureTable(compared, comparison, spread?.skews)).join('\n'))}
${spread ? `${spreadSection(spread, comparison)}\n` : ''}${bestSection(comparison)}${pairsSection(comparison)}${section('states', 'What the stations did', stateFigures(comparison))}
${crewSection(comparison)}
${lost}${lookedAt.sizes}${stocksSection(comparison, source.estimated)}
${costs.length > 0 ? `${costsSection(costs)}\n` : ''}${lookedAt.levels}${source.narrowed ? `${narrowedSection(source.narrowed)}\n` : ''}${source.pilot ? `${warmUpSection(source.pilot)}\n` : ''}${section('reading', 'How to read this', `<div class="prose">${reading(comparison, spread ? spreadTerms(targets.length > 0) : [])}</div>`)}
${section('text', 'Scenario text', [unfolded(provenance.file, scenarioText), ...joined.map(({ file, text }) => unfolded(file, text))].join('\n'))}
${section('origin', 'Provenance', origin(provenance, joined))}`;
  return framed({
    ...{ name: title, title, kind: several ? 'comparison of policies' : 'report on one policy' },
    skip: { id: 'verdict', text: 'Skip to the verdict' },
    sections,
  });
}
