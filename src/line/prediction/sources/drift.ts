import type { Scenario } from '../../../scenario/scenario.ts';
import { type Deviation, driftTimes } from '../deviations.ts';
import { type Response, responsesOf, shiftsAt } from '../response.ts';
import type { Cases } from '../source.ts';

/** How far each of these has drifted at a time, s; those that do not drift are left out. */
export const driftedBy = (time: number, deviations: readonly Deviation[]): Map<string, number> =>
  new Map(
    deviations.flatMap(({ name, perSecond }) => (perSecond === 0 ? [] : [[name, perSecond * time] as const])),
  );

/** Names all that drifts: it drifts at the same time. */
export const driftName = (deviations: readonly Deviation[]): string =>
  `drift of ${deviations.flatMap(({ name, perSecond }) => (perSecond === 0 ? [] : [name])).join(' and ')}`;

/** Whether something drifts that features follow in a curve, so that both have to be looked at together. */
export const curvesDrift = ({ deviations, curved }: Response): boolean =>
  deviations.some(({ name, perSecond }) => perSecond !== 0 && curved.has(name));

/** What drifts over the counted time of a run, as far as features follow it linearly. */
export function driftCases(scenario: Scenario): Cases[] {
  return responsesOf(scenario).flatMap((response) => {
    const { deviations } = response;
    if (deviations.every(({ perSecond }) => perSecond === 0) || curvesDrift(response)) return [];
    const times = driftTimes(scenario);
    const cases = times.map((time) => ({
      share: 1 / times.length,
      shifts: shiftsAt(driftedBy(time, deviations), response),
    }));
    return [{ name: driftName(deviations), cases }];
  });
}
