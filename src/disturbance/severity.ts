import type { Law } from '../kernel/distributions/index.ts';
import { gradeSharesOf } from '../line/grade-shares.ts';
import type { DisturbanceSpec, Disturbing } from '../scenario/disturbances.ts';
import type { ByGrade } from '../scenario/grades.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { stretched, within } from './stretched.ts';
import { undisturbed } from './undisturbed.ts';

/** No speed, no flow of orders and no rate of breakdowns falls below this share of what it is otherwise. */
export const LEAST = 0.01;

type Worse<Kind extends DisturbanceSpec['disturbs']> = (
  it: Disturbing<Kind>,
  factor: number,
  scenario: Scenario,
) => Disturbing<Kind>;

/** Something that may be left out. */
const maybe = (law: Law | undefined, to: (law: Law) => Law): Law | undefined => law && to(law);

/** What is added to something, which has no bounds. */
const shift = (law: Law | undefined, factor: number) => maybe(law, (it) => stretched(it, factor));

/** A share of what is usual: what it lacks of it, or has beyond it, is stretched. */
const share = (law: Law, factor: number, least: number, most = Number.POSITIVE_INFINITY) =>
  within(stretched(law, factor, 1), least, most);

/** What is on or off lasts so many times as long. */
const longer = <It extends DisturbanceSpec>(it: It, factor: number): It => ({
  ...it,
  for: stretched(it.for, factor),
});

/** Shares so far on the way from the usual ones to others, or beyond; none is negative, and they sum to 1. */
function mixed(grades: ByGrade, usual: ByGrade, factor: number): ByGrade {
  if (factor === 1) return grades;
  const mix = grades.map((of, i) => Math.max(0, usual[i]! + factor * (of - usual[i]!)));
  const sum = mix.reduce((all, one) => all + one, 0);
  return mix.map((one) => one / sum);
}

const marks: Worse<'marks'> = (it, factor, { stations }) => {
  const station = stations.find(({ name }) => name === it.station);
  if (station?.does !== 'mark') throw new RangeError(`"${it.station}" is no marking station`);
  const { takesHold: usual } = station;
  const takesHold = maybe(it.takesHold, (law) => within(stretched(law, factor, usual), 0, 1));
  return { ...it, takesHold, grades: it.grades && mixed(it.grades, gradeSharesOf(station), factor) };
};

const worse: { readonly [Kind in DisturbanceSpec['disturbs']]: Worse<Kind> } = {
  ...{ supplier: longer, station: longer, crew: longer, marks },
  setting: (it, factor) => ({ ...it, by: { ...it.by, law: stretched(it.by.law, factor) } }),
  feature: (it, factor) => ({
    ...it,
    by: shift(it.by, factor),
    spread: maybe(it.spread, (law) => share(law, factor, 0)),
  }),
  gauge: (it, factor) => ({
    ...it,
    bias: shift(it.bias, factor),
    spread: maybe(it.spread, (law) => share(law, factor, 0)),
  }),
  lot: (it, factor) => ({
    ...it,
    by: shift(it.by, factor),
    unsound: maybe(it.unsound, (law) => within(stretched(law, factor), 0, 1)),
  }),
  health: (it, factor) => ({
    ...it,
    asOften: maybe(it.asOften, (law) => share(law, factor, LEAST)),
    repairsTake: maybe(it.repairsTake, (law) => share(law, factor, 0)),
  }),
  reader: (it, factor) => ({ ...it, to: share(it.to, factor, 0, 1) }),
  conveyor: (it, factor) => ({ ...it, to: share(it.to, factor, 0, 1) }),
  speed: (it, factor) => ({ ...it, to: share(it.to, factor, LEAST) }),
  demand: (it, factor) => ({ ...it, to: share(it.to, factor, LEAST) }),
};

/**
 * The scenario with its disturbances so many times as severe: 1 is as written, 0 is without them, byte for byte the
 * undisturbed line. What has a size has so many times the size: a shift as it is, a share of what is usual by what it
 * lacks of all, or has beyond it. What would fall below nothing is cut there, or at `LEAST` where nothing would stop the
 * line for ever; of a distribution its bounds are. What is on or off (a station, a supplier, a crew) lasts so many
 * times as long. When each first comes does not change; what comes again counts from its end.
 * @throws RangeError when the factor is negative or is none
 */
export function atSeverity(scenario: Scenario, factor: number): Scenario {
  if (!(factor >= 0 && factor < Number.POSITIVE_INFINITY))
    throw new RangeError(`a severity is 0 or more, and ${factor} is not`);
  if (factor === 1) return scenario;
  if (factor === 0) return undisturbed(scenario);
  // Each disturbance meets the function of its own kind, which the type checker cannot follow.
  const made = (it: DisturbanceSpec) => worse[it.disturbs](it as never, factor, scenario) as DisturbanceSpec;
  return { ...scenario, disturbances: scenario.disturbances.map(made) };
}
