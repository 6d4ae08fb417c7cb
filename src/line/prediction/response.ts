import type { Scenario } from '../../scenario/scenario.ts';
import { type Deviation, deviationsOf, formingOf } from './deviations.ts';

/** By how much each feature follows something, mm per unit. */
type Coefficients = ReadonlyMap<string, number>;

/** A term on the product of two deviations, or on the square of one, by their names. */
interface Quadratic {
  readonly of: readonly [string, string];
  readonly gains: Coefficients;
}

/** What one forming station makes of the deviations of its settings and of the thickness of the sheet. */
export interface Response {
  readonly deviations: readonly Deviation[];
  /** By name of a deviation. */
  readonly linear: ReadonlyMap<string, Coefficients>;
  readonly quadratic: readonly Quadratic[];
  /** Names of the deviations that features follow otherwise than linearly. */
  readonly curved: ReadonlySet<string>;
}

/** The curved deviations in groups, so that no term joins those of different groups. */
export function curvedGroups({ deviations, quadratic, curved }: Response): Deviation[][] {
  let groups = deviations.filter(({ name }) => curved.has(name)).map((deviation) => [deviation]);
  for (const { of } of quadratic) {
    const joins = (group: readonly Deviation[]) => group.some(({ name }) => of.includes(name));
    groups = [groups.filter(joins).flat(), ...groups.filter((group) => !joins(group))];
  }
  return groups.filter((group) => group.length > 0);
}

/** Of each forming station. */
export function responsesOf(scenario: Scenario): Response[] {
  const features = scenario.parts.flatMap((part) => part.features);
  return formingOf(scenario).map((station) => {
    const made = features.filter(({ madeAt }) => madeAt === station.name);
    const deviations = deviationsOf(station, scenario);
    const linear = new Map(
      deviations.map(({ name }) => {
        const gains = made.flatMap((feature) => {
          const gain = feature.gains?.[name]?.value;
          return gain ? [[feature.name, gain] as const] : [];
        });
        return [name, new Map(gains)];
      }),
    );
    const quadratic = made.flatMap(({ name, curvatures, interactions }) => [
      ...Object.entries(curvatures ?? {}).map(
        ([of, { value }]): Quadratic => ({ of: [of, of], gains: new Map([[name, value]]) }),
      ),
      ...(interactions ?? []).map(
        ({ of, gain }): Quadratic => ({ of, gains: new Map([[name, gain.value]]) }),
      ),
    ]);
    return { deviations, linear, quadratic, curved: new Set(quadratic.flatMap(({ of }) => of)) };
  });
}

/** Adds `factor` times `of` to `sum`. */
export function addTo(sum: Map<string, number>, of: Coefficients, factor: number): void {
  if (factor === 0) return;
  for (const [name, gain] of of) sum.set(name, (sum.get(name) ?? 0) + factor * gain);
}

/** What deviations of these values add to each feature, mm; those not named are nothing. */
export function shiftsAt(
  values: ReadonlyMap<string, number>,
  { linear, quadratic }: Response,
): Map<string, number> {
  const sum = new Map<string, number>();
  for (const [name, value] of values) addTo(sum, linear.get(name)!, value);
  for (const { of, gains } of quadratic)
    addTo(sum, gains, (values.get(of[0]) ?? 0) * (values.get(of[1]) ?? 0));
  return sum;
}
