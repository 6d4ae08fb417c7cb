import type { ExplainedGauge, ExplainedPlan } from '../../experiment/explained/gauge.ts';
import { percent } from '../format.ts';
import { counted } from '../words.ts';
import { note, shareRow, shareRowIfAny, title } from './rows.ts';

function gaugingTitle(
  station: string,
  { name, errorShare, categories }: ExplainedGauge['features'][number],
): string {
  if (errorShare === null || categories === null) return `${name} at ${station}`;
  const apart = Number.isFinite(categories)
    ? ` (% GRR), ${counted(categories, 'distinct category', 'distinct categories')}`
    : '';
  return `${name} at ${station}: gauge error ${percent(errorShare)} % of the spread of the readings${apart}`;
}

function planLines(
  station: string,
  { lot, normal, tightened, accepted }: ExplainedPlan,
  width: number,
): string[] {
  const chance = (accepts: number | null) => (accepts === null ? '' : ` (${percent(accepts)} % of lots)`);
  const text =
    `normal inspection accepts up to ${normal.accept} off limits${chance(normal.accepts)}, tightened up to ` +
    `${tightened.accept} of ${tightened.sample}${chance(tightened.accepts)}; predicted in the long run, switching between them`;
  return [
    ...title(`lots of ${lot} at ${station}: letter ${normal.letter}, sample ${normal.sample}`, width),
    shareRow('lots accepted', accepted, width),
    ...note(text, width),
  ];
}

export function gaugeLines({ station, features, off, plan }: ExplainedGauge, width: number): string[] {
  return [
    ...features.flatMap((it) => [
      ...title(gaugingTitle(station, it), width),
      ...shareRowIfAny('read off limits', it.off, width),
      ...shareRowIfAny('bad, but read as good', it.badPassed, width),
      ...shareRowIfAny('good, but read as bad', it.goodRejected, width),
    ]),
    ...(off && features.length > 1
      ? [...title(`${station}, all it measures`, width), shareRow('parts off limits', off, width)]
      : []),
    ...(plan ? planLines(station, plan, width) : []),
  ];
}
