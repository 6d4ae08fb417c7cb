import type { Scenario } from '../../../scenario/scenario.ts';
import { normalNodes } from '../../../statistics/normal-nodes.ts';
import { type Deviation, driftTimes, sdOf } from '../deviations.ts';
import { addTo, curvedGroups, type Response, responsesOf, shiftsAt } from '../response.ts';
import type { Case, Cases, Source } from '../source.ts';
import { curvesDrift, driftedBy, driftName } from './drift.ts';

/**
 * Sources that have the variance of a quadratic response to normal deviations, without their shape: a deviation and its
 * square less the variance are uncorrelated, and so is the product of two deviations with either (orthogonality of the
 * Hermite polynomials, Abramowitz and Stegun 22.2). With the deviation d = b + s z, the gain g, the curvature c and the
 * interaction k, these are (g + 2 c b + k b') s, 2^(1/2) c s^2 and k s s'.
 */
function sourcesOf(group: readonly Deviation[], { linear, quadratic }: Response): Source[] {
  const named = new Map(group.map((deviation) => [deviation.name, deviation]));
  const offset = (name: string) => named.get(name)?.offset ?? 0;
  const straight = group.flatMap(({ name: deviation, parts }) => {
    const gains = new Map<string, number>();
    addTo(gains, linear.get(deviation)!, 1);
    for (const { of, gains: by } of quadratic) {
      if (of[0] === deviation) addTo(gains, by, offset(of[1]));
      if (of[1] === deviation) addTo(gains, by, offset(of[0]));
    }
    return parts.map(({ name, sd }) => {
      const of = new Map<string, number>();
      addTo(of, gains, sd);
      return { name, of };
    });
  });
  const bent = new Map<string, Source & { readonly of: Map<string, number> }>();
  for (const { of, gains } of quadratic) {
    const [one, other] = of.map((name) => named.get(name));
    if (!one || !other) continue;
    const name = one === other ? `${one.name} squared` : [...of].sort().join(' with ');
    if (!bent.has(name)) bent.set(name, { name, of: new Map() });
    addTo(bent.get(name)!.of, gains, sdOf(one) * sdOf(other) * (one === other ? Math.SQRT2 : 1));
  }
  return [...straight, ...bent.values()];
}

/** One case for each point that stands for the deviations of a group, on top of what has drifted in that time, s. */
function casesOf(
  group: readonly Deviation[],
  response: Response,
  drifting: readonly Deviation[],
  time: number,
): Case[] {
  const spread = group.filter((deviation) => sdOf(deviation) > 0);
  const drifted = driftedBy(time, drifting);
  return normalNodes(spread.length).map(({ share, z }) => {
    const values = new Map(drifted);
    for (const { name, offset } of group) values.set(name, (values.get(name) ?? 0) + offset);
    for (const [i, deviation] of spread.entries())
      values.set(deviation.name, values.get(deviation.name)! + sdOf(deviation) * z[i]!);
    return { share, shifts: shiftsAt(values, response) };
  });
}

const nameOf = (group: readonly Deviation[]): string => group.map(({ name }) => name).join(' and ');

/** Where something drifts that features follow in a curve: gains move with time, and what comes from what cannot be told apart. */
function drifting(curved: readonly Deviation[], response: Response, times: readonly number[]): Cases {
  const cases = times.flatMap((time) =>
    casesOf(curved, response, response.deviations, time).map((it) => ({
      ...it,
      share: it.share / times.length,
    })),
  );
  return { name: `${nameOf(curved)}, with the ${driftName(response.deviations)}`, cases };
}

/** What the deviations that features follow in a curve, or as a product, make of them. */
export function curvedCases(scenario: Scenario): Cases[] {
  return responsesOf(scenario).flatMap((response): Cases[] => {
    const groups = curvedGroups(response);
    if (curvesDrift(response)) return [drifting(groups.flat(), response, driftTimes(scenario))];
    return groups.map((group) => ({
      name: nameOf(group),
      cases: casesOf(group, response, [], 0),
      from: sourcesOf(group, response),
    }));
  });
}
