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

/** What the middles of the times make of features: as many sources as times, which have their variance together. */
function overTimes(name: string, middles: readonly ReadonlyMap<string, number>[]): Source[] {
  const mean = new Map<string, number>();
  for (const middle of middles) addTo(mean, middle, 1 / middles.length);
  return middles.map((middle) => {
    const of = new Map<string, number>();
    addTo(of, middle, 1 / Math.sqrt(middles.length));
    addTo(of, mean, -1 / Math.sqrt(middles.length));
    return { name, of };
  });
}

/** Where something drifts that features follow in a curve, their gains move with time: all is looked at time by time. */
function drifting(curved: readonly Deviation[], response: Response, times: readonly number[]): Cases {
  const each = times.map((time) => casesOf(curved, response, response.deviations, time));
  const at = (time: number) => curved.map((it) => ({ ...it, offset: it.offset + it.perSecond * time }));
  const weight = 1 / Math.sqrt(times.length);
  const within = times.flatMap((time) =>
    sourcesOf(at(time), response).map(({ name, of }) => {
      const weighted = new Map<string, number>();
      addTo(weighted, of, weight);
      return { name, of: weighted };
    }),
  );
  const middles = each.map((cases) => {
    const middle = new Map<string, number>();
    for (const { share, shifts } of cases) addTo(middle, shifts, share);
    return middle;
  });
  return {
    name: `${nameOf(curved)}, with the ${driftName(response.deviations)}`,
    cases: each.flat().map((it) => ({ ...it, share: it.share / times.length })),
    from: [...within, ...overTimes(driftName(response.deviations), middles)],
  };
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
