import type { CauseRates } from '../experiment/cause-rates.ts';
import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import type { CostRow } from '../experiment/cost-rows.ts';
import type { Looked } from '../experiment/looked.ts';
import type { Narrowed } from '../experiment/narrow.ts';
import type { Pilot } from '../experiment/pilot.ts';
import type { Recovered } from '../experiment/recovered.ts';
import type { Spread } from '../experiment/spread.ts';
import type { EstimatedStocks } from '../experiment/stock-estimates.ts';
import type { TargetFound } from '../experiment/targets.ts';
import type { Twins } from '../experiment/twins.ts';
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
import { costsSection } from './costs-page.ts';
import { crewSection } from './crew-page.ts';
import { escapeHtml } from './escape.ts';
import { glanceSection } from './glance-page.ts';
import { histogramsSection } from './histograms-page.ts';
import { section, warning } from './html.ts';
import { intervalsSection } from './intervals-page.ts';
import { type Joined, joinedTexts, unfolded } from './joined.ts';
import { levelsSection } from './levels-page.ts';
import { measuresSection } from './measures-page.ts';
import { narrowedSection } from './narrowed-page.ts';
import { framed, type Origins, originList } from './page-frame.ts';
import { pairsSection } from './pairs-page.ts';
import { reading } from './reading-page.ts';
import { spreadTerms } from './reading-terms.ts';
import { recoveredSection } from './recovered-page.ts';
import { skewText } from './skew-text.ts';
import { spreadSection } from './spread-page.ts';
import { statesSection } from './states-page.ts';
import { stocksSection } from './stocks-page.ts';
import { targetSection } from './target-page.ts';
import { twinsSection } from './twins-page.ts';
import { verdictSentences } from './verdict.ts';
import { warmUpSection } from './warm-up-page.ts';

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

function paragraphs(text: string): string {
  return text
    .split(/\n\s*\n/)
    .filter((part) => part.trim() !== '')
    .map((part) => `<p>${escapeHtml(part.trim())}</p>`)
    .join('\n');
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
${[...warnings, ...skewText(spread?.skews ?? [])].map(warning).join('\n')}`;
  const costs = withBoundMarkedInRows([{ rows: source.costs ?? [] }], source.comparison)[0]!.rows;
  const terms = reading(comparison, spread ? spreadTerms(targets.length > 0) : []);
  const texts = [
    unfolded(provenance.file, scenarioText),
    ...joined.map(({ file, text }) => unfolded(file, text)),
  ];
  const several = comparison.policies.length > 1;
  const prose = (text: string) => `<div class="prose">${text}</div>`;
  const sections = [
    section('verdict', 'Verdict', verdict),
    glanceSection(comparison),
    targets.length > 0 ? targetSection(targets, comparison) : '',
    intervalsSection(comparison),
    section('about', 'The scenario', prose(paragraphs([about, ...joinedTexts(joined)].join('\n\n')))),
    twins ? twinsSection(twins, comparison) : '',
    recovered ? recoveredSection(recovered) : '',
    statesSection(comparison),
    crewSection(comparison),
    looked ? levelsSection(looked) : '',
    looked ? histogramsSection(looked) : '',
    source.causes ? causesSection(withBoundMarkedInCauses(source.causes, source.comparison)) : '',
    stocksSection(comparison, source.estimated),
    costs.length > 0 ? costsSection(costs) : '',
    measuresSection(comparison, spread?.skews),
    spread ? spreadSection(spread, comparison) : '',
    bestSection(comparison),
    pairsSection(comparison),
    source.narrowed ? narrowedSection(source.narrowed) : '',
    source.pilot ? warmUpSection(source.pilot) : '',
    section('reading', 'How to read this', prose(terms)),
    section('text', 'Scenario text', texts.join('\n')),
    section('origin', 'Provenance', origin(provenance, joined)),
  ];
  return framed({
    ...{ name: title, title, kind: several ? 'comparison of policies' : 'report on one policy' },
    skip: { id: 'verdict', text: 'Skip to the verdict' },
    sections: sections.filter((text) => text !== '').join('\n'),
  });
}
