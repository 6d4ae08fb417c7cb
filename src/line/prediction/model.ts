import type { Scenario } from '../../scenario/scenario.ts';
import { designed } from '../designed.ts';
import type { Case, Cases, Source } from './source.ts';
import { casesOf, sourcesOf } from './sources.ts';

/** A dimension, or a sum of some of them, each with its factor: a clearance is hole minus shaft. */
export type Combination = ReadonlyMap<string, number>;

/** Middle and variance of combinations in one case of everything that comes in cases. */
export interface Condition {
  readonly share: number;
  readonly mean: number[];
  readonly covariance: number[][];
}

/** Part of the variance of a combination, mm², by what it comes from. */
export interface Contribution {
  readonly name: string;
  readonly variance: number;
}

const dot = (combination: Combination, of: ReadonlyMap<string, number> | undefined): number => {
  let sum = 0;
  if (of) for (const [name, factor] of combination) sum += factor * (of.get(name) ?? 0);
  return sum;
};

/** Variance that a case adds: what it spreads is each dimension's own. */
function spreadOf(one: Combination, other: Combination, { spreads }: Case): number {
  let sum = 0;
  if (spreads)
    for (const [name, factor] of one) sum += factor * (other.get(name) ?? 0) * (spreads.get(name) ?? 0) ** 2;
  return sum;
}

/** One case of each, in every combination. */
function* together([first, ...others]: readonly Cases[]): Generator<{ share: number; cases: Case[] }> {
  if (!first) {
    yield { share: 1, cases: [] };
    return;
  }
  for (const one of first.cases)
    for (const { share, cases } of together(others))
      yield { share: one.share * share, cases: [one, ...cases] };
}

/**
 * The dimensions of an undisturbed line as the scenario describes them: middles, and independent sources that they follow
 * linearly. Normal where nothing comes in cases, else a mixture of normal laws.
 */
export class DimensionModel {
  private readonly centres: ReadonlyMap<string, number>;
  private readonly sources: readonly Source[];
  private readonly cases: readonly Cases[];

  constructor(scenario: Scenario) {
    const ofParts = scenario.parts.flatMap(({ features }) =>
      features.map((feature) => [feature.name, designed(feature)] as const),
    );
    const ofMates = scenario.stocks.flatMap(({ name, features }) =>
      (features ?? []).map((feature) => [`${name}.${feature.name}`, feature.aim] as const),
    );
    this.centres = new Map([...ofParts, ...ofMates]);
    this.sources = sourcesOf(scenario);
    this.cases = casesOf(scenario);
  }

  /** mm. */
  mean(of: Combination): number {
    const inCases = this.cases.map(({ cases }) =>
      cases.reduce((sum, one) => sum + one.share * dot(of, one.shifts), 0),
    );
    return inCases.reduce((sum, shift) => sum + shift, dot(of, this.centres));
  }

  /** What the variance comes from, the most first; sources of one name count together. */
  contributions(of: Combination): Contribution[] {
    const byName = new Map<string, number>();
    const add = (name: string, variance: number) => {
      if (variance > 0) byName.set(name, (byName.get(name) ?? 0) + variance);
    };
    for (const { name, of: follows } of this.sources) add(name, dot(of, follows) ** 2);
    for (const { name, cases } of this.cases) {
      const mean = cases.reduce((sum, one) => sum + one.share * dot(of, one.shifts), 0);
      for (const one of cases)
        add(name, one.share * ((dot(of, one.shifts) - mean) ** 2 + spreadOf(of, of, one)));
    }
    return [...byName]
      .map(([name, variance]) => ({ name, variance }))
      .sort((one, other) => other.variance - one.variance);
  }

  /** mm. */
  sd(of: Combination): number {
    return Math.sqrt(this.contributions(of).reduce((sum, { variance }) => sum + variance, 0));
  }

  /** The joint normal law of some combinations in each case; shares add up to 1. */
  conditions(of: readonly Combination[]): Condition[] {
    const base = of.map((one) =>
      of.map((other) =>
        this.sources.reduce((sum, source) => sum + dot(one, source.of) * dot(other, source.of), 0),
      ),
    );
    // Cases that alter none of these dimensions are left out: they would only repeat the work.
    const alter = this.cases.filter(({ cases }) =>
      cases.some((one) => of.some((each) => dot(each, one.shifts) !== 0 || spreadOf(each, each, one) > 0)),
    );
    return [...together(alter)].map(({ share, cases }) => ({
      share,
      mean: of.map((one) => cases.reduce((sum, each) => sum + dot(one, each.shifts), dot(one, this.centres))),
      covariance: of.map((one, i) =>
        of.map((other, j) => cases.reduce((sum, each) => sum + spreadOf(one, other, each), base[i]![j]!)),
      ),
    }));
  }
}
