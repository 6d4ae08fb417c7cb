import type { CauseRates } from '../experiment/cause-rates.ts';
import type { Comparison } from '../experiment/comparison.ts';
import type { Looked } from '../experiment/looked.ts';
import type { Pilot } from '../experiment/pilot.ts';
import type { Spread } from '../experiment/spread.ts';
import { causeCharts } from './causes-chart.ts';
import { foremost } from './causes-page.ts';
import { headingOf } from './cells.ts';
import { sizesChart } from './histograms-page.ts';
import { levelsChart, UNITS } from './levels-page.ts';
import { SPREAD_KEY, spreadChart } from './spread-chart.ts';
import { warmUpChart } from './warm-up-chart.ts';
import { warmUpKey } from './warm-up-page.ts';

/** What a report shows beside its measures, as far as it does. */
export interface Further {
  readonly pilot?: Pilot | undefined;
  readonly spread?: Spread | undefined;
  readonly causes?: CauseRates | undefined;
  readonly looked?: Looked | undefined;
}

/** A chart, and what its file is called after. */
interface Named {
  readonly kind: string;
  readonly of: string;
  readonly svg: string;
  readonly title: string;
  readonly key: string;
}

const LANES = 'A lane for each policy, by the same scale. ';

function ofSpread(comparison: Comparison, spread: Spread | undefined): Named[] {
  const [first] = spread?.measures ?? [];
  const measured = comparison.measures.find(({ measure }) => measure.key === first?.measure.key);
  if (!first || !measured) return [];
  const title = `Every run: ${headingOf(measured)}`;
  return [
    { kind: 'spread', of: first.measure.key, svg: spreadChart(first, comparison), title, key: SPREAD_KEY },
  ];
}

const ofCauses = ({ scrapped }: CauseRates): Named[] =>
  (scrapped.length > 0 ? causeCharts(foremost(scrapped)) : []).map(({ policy, svg }) => ({
    ...{ kind: 'causes', of: policy, svg, title: `Why parts were lost: ${policy}` },
    key: 'Parts of 1000 started that were scrapped, by station and cause.',
  }));

const ofLooked = ({ sizes, levels, times }: Looked): Named[] => [
  ...sizes.map((own) => ({
    ...{ kind: 'sizes', of: own.of, svg: sizesChart(own), title: `How sizes lie: ${own.of}` },
    key: `${LANES}Height: share of the values in a bin. Upright rules: the limits.`,
  })),
  ...levels.map((own) => ({
    ...{ kind: 'levels', of: own.name, svg: levelsChart(own, times), title: `Over time: ${own.name}` },
    key: `${LANES}Height: ${UNITS[own.kind]}, mean over the runs.`,
  })),
];

const ofPilot = (pilot: Pilot): Named => ({
  ...{ kind: 'warm-up', of: '', svg: warmUpChart(pilot), key: warmUpKey(pilot) },
  title: 'Output while the line settles, good /h',
});

/** The charts of the page that go beyond measures, states and twins, in its order. */
export function furtherCharts(comparison: Comparison, { pilot, spread, causes, looked }: Further): Named[] {
  return [
    ...ofSpread(comparison, spread),
    ...(causes ? ofCauses(causes) : []),
    ...(looked ? ofLooked(looked) : []),
    ...(pilot ? [ofPilot(pilot)] : []),
  ];
}
