import type { FeatureSpec } from '../../../scenario/parts.ts';
import type { Scenario } from '../../../scenario/scenario.ts';
import type { SpecOf } from '../../../scenario/stations.ts';
import { evenPoints } from '../../../statistics/even-points.ts';
import type { Case, Cases, Open } from '../source.ts';
import { toolLife } from '../tool-life.ts';

/** Ages that stand for those of a long life. */
const AGES = 48;

/** What a tool that has made so many cuts before adds to features. */
function caseAt(cuts: number, share: number, worn: readonly FeatureSpec[]): Case {
  const shifts = new Map<string, number>();
  const spreads = new Map<string, number>();
  for (const { name, wear } of worn) {
    shifts.set(name, (wear!.shift / wear!.per) * cuts);
    spreads.set(name, (wear!.spread / wear!.per) * cuts);
  }
  return { share, shifts, spreads };
}

/** From the first cut of a tool to its last, each age as often. */
function casesOf(life: number, worn: readonly FeatureSpec[]): Case[] {
  const points = Math.min(life, AGES);
  // Whole numbers from 0 to life - 1.
  const ages = evenPoints((life - 1) / 2, Math.sqrt((life ** 2 - 1) / 12), points);
  return ages.map((cuts) => caseAt(cuts, 1 / points, worn));
}

/** The trimming stations whose tools wear, with the features that show it. */
function wearing({ stations, parts }: Scenario) {
  const features = parts.flatMap((part) => part.features);
  return stations.flatMap((spec) => {
    if (spec.does !== 'trim') return [];
    const worn = features.filter(({ madeAt, wear }) => wear && madeAt === spec.name);
    return worn.length > 0 ? [{ spec: spec as SpecOf<'trim'> & { readonly name: string }, worn }] : [];
  });
}

/** How old the tool is that cuts a part, where each tool has a known life. */
export function wearCases(scenario: Scenario): Cases[] {
  return wearing(scenario).flatMap(({ spec, worn }) => {
    const life = toolLife(spec, scenario);
    if (typeof life !== 'number') return [];
    return [{ name: `tool of ${spec.name}`, cases: casesOf(life, worn) }];
  });
}

/** The features that wear with tools of a life that the scenario does not settle. */
export function wearOpen(scenario: Scenario): Open[] {
  return wearing(scenario).flatMap(({ spec, worn }) => {
    const life = toolLife(spec, scenario);
    return typeof life === 'number' ? [] : [{ why: life.why, of: new Set(worn.map(({ name }) => name)) }];
  });
}
