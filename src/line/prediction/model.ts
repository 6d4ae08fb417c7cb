import type { Scenario } from '../../scenario/scenario.ts';
import { designed } from '../designed.ts';
import { casesTogether } from './cases-together.ts';
import type { Case, Cases, Open, Source } from './source.ts';
import { casesOf, openOf, sourcesOf } from './sources.ts';

/** A dimension, or a sum of some of them, each with its factor: a clearance is hole minus shaft. */
export type Combination = ReadonlyMap<string, number>;

/** Middle and variance of combinations in one case of everything that comes in cases. */
export interface Condition {
  readonly share: number;
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** By how much something moves the mean of a combination off its design, mm. */
export interface Shift {
  readonly name: string;
  readonly shift: number;
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

/** What a case makes of some combinations; `spreads` is null where it spreads none of them. */
interface Alteration {
  readonly share: number;
  readonly alters: boolean;
  readonly shifts: readonly number[];
  readonly spreads: readonly (readonly number[])[] | null;
}

function alteration(of: readonly Combination[], it: Case): Alteration {
  const shifts = of.map((one) => dot(one, it.shifts));
  const spreads = of.map((one) => of.map((other) => spreadOf(one, other, it)));
  const spreading = spreads.some((row, i) => row[i]! > 0);
  const alters = spreading || shifts.some((shift) => shift !== 0);
  return { share: it.share, alters, shifts, spreads: spreading ? spreads : null };
}

/**
 * The dimensions of an undisturbed line as the scenario describes them: middles, and independent sources that they follow
 * linearly. Normal where nothing comes in cases, else a mixture of normal laws.
 */
export class DimensionModel {
  private readonly centres: ReadonlyMap<string, number>;
  private readonly sources: readonly Source[];
  private readonly cases: readonly Cases[];
  private readonly open: readonly Open[];

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
    this.open = openOf(scenario);
  }

  /** Why there is no closed form for these; null where there is. All else that is asked of them is then worth nothing. */
  openBy(of: readonly Combination[]): string | null {
    const names = of.flatMap((one) => [...one.keys()]);
    return this.open.find((it) => names.some((name) => it.of.has(name)))?.why ?? null;
  }

  /** mm. */
  mean(of: Combination): number {
    return this.shifts(of).reduce((sum, { shift }) => sum + shift, dot(of, this.centres));
  }

  /** What moves the mean off the centre as designed, mm, by name. */
  shifts(of: Combination): Shift[] {
    return this.cases.flatMap(({ name, cases }) => {
      const shift = cases.reduce((sum, one) => sum + one.share * dot(of, one.shifts), 0);
      return shift !== 0 ? [{ name, shift }] : [];
    });
  }

  /** What the variance comes from, the most first; sources of one name count together. */
  contributions(of: Combination): Contribution[] {
    const byName = new Map<string, number>();
    const add = (name: string, variance: number) => {
      if (variance > 0) byName.set(name, (byName.get(name) ?? 0) + variance);
    };
    for (const { name, of: follows } of this.sources) add(name, dot(of, follows) ** 2);
    for (const { name, cases, from } of this.cases) {
      if (from) {
        for (const { name, of: follows } of from) add(name, dot(of, follows) ** 2);
        continue;
      }
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
    const centres = of.map((one) => dot(one, this.centres));
    // Cases that alter none of these dimensions are left out: they would only repeat the work.
    const altering = this.cases
      .map(({ cases }) => cases.map((it) => alteration(of, it)))
      .filter((cases) => cases.some(({ alters }) => alters));
    return casesTogether(altering).map(({ share, cases }) => ({
      share,
      mean: centres.map((centre, i) => cases.reduce((sum, { shifts }) => sum + shifts[i]!, centre)),
      covariance: cases.some(({ spreads }) => spreads !== null)
        ? base.map((row, i) =>
            row.map((value, j) => cases.reduce((sum, { spreads }) => sum + (spreads?.[i]?.[j] ?? 0), value)),
          )
        : base,
    }));
  }
}
