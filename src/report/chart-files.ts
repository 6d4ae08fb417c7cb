import { type Comparison, LEVEL } from '../experiment/comparison.ts';
import type { Twins } from '../experiment/twins.ts';
import { headingOf, percentLevel } from './cells.ts';
import { intervalCharts, stateCharts } from './charts.ts';
import { durationText } from './duration.ts';
import { type Further, furtherCharts } from './further-charts.ts';
import type { Origin } from './origin.ts';
import { occurring, STATE_LOOKS } from './state-words.ts';
import { svgFile } from './svg-file.ts';
import { twinCharts } from './twin-charts.ts';

interface ChartFile {
  readonly name: string;
  readonly content: string;
}

const SHARE = `${percentLevel(LEVEL)} %`;
/** Longest part of a file's name that is from a policy. */
const LONGEST = 40;

/** Numbered, so that names which differ in other signs alone stay apart. */
function numbered(kind: string, policy: string, index: number): string {
  const plain = [...policy.replace(/[^\p{L}\p{N}_]+/gu, '-')].slice(0, LONGEST).join('');
  return `${kind}-${index + 1}-${plain.replace(/^-|-$/g, '')}.svg`;
}

/** Every chart of the page as a file of its own: `intervals-MEASURE.svg`, `states-N-POLICY.svg`, `rates-N-POLICY.svg`,
 * and so on for what else it shows. */
export function chartFiles(
  comparison: Comparison,
  { twins, ...further }: { readonly twins?: Twins | undefined } & Further,
  origin: Origin,
): ChartFile[] {
  const { measures, baseline, stateShares } = comparison;
  const several = comparison.policies.length > 1;
  const intervals = intervalCharts(comparison).map((svg, i): ChartFile => {
    const key =
      `Dot: mean. Bar: its ${SHARE} interval, where there is one.` +
      (several
        ? ` Open dot and dotted rule: ${baseline}. The words are verdicts on paired differences.`
        : '');
    const title = headingOf(measures[i]!);
    return {
      name: `intervals-${measures[i]!.measure.key}.svg`,
      content: svgFile({ svg, title, key }, origin),
    };
  });
  const legend = occurring(Object.values(stateShares)).map((state) => STATE_LOOKS[state]);
  const states = stateCharts(comparison).map(({ policy, svg }, i): ChartFile => {
    const key = 'Mean share of the counted time in each state.';
    const title = `What the stations did: ${policy}`;
    return { name: numbered('states', policy, i), content: svgFile({ svg, title, key, legend }, origin) };
  });
  const curves = (twins ? twinCharts(twins) : []).map(({ policy, svg }, i): ChartFile => {
    const { rolling, seeds } = twins!;
    const key =
      `Solid: good per hour over the ${durationText(rolling.window)} before, mean over the seeds` +
      `${seeds > 1 ? `; band: its ${SHARE} interval at each time` : ''}. Dashed: the same without the disturbances, ` +
      'which are shaded from their mean beginning to their mean end.';
    const title = `Rolling rate, good /h: ${policy}`;
    return { name: numbered('rates', policy, i), content: svgFile({ svg, title, key }, origin) };
  });
  const others = furtherCharts(comparison, further);
  const files = others.map(({ kind, of, svg, title, key }, i): ChartFile => {
    const before = others.slice(0, i).filter((other) => other.kind === kind).length;
    const name = kind === 'warm-up' ? 'warm-up.svg' : numbered(kind, of, before);
    return { name, content: svgFile({ svg, title, key }, origin) };
  });
  return [...intervals, ...states, ...curves, ...files];
}
