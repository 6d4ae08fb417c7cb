import type { Scenario } from '../../scenario/scenario.ts';

/** By how much each feature that `station` makes follows a setting, or the "thickness" of the sheet; mm per unit. */
export function gainsOn(setting: string, station: string, { parts }: Scenario): Map<string, number> {
  const made = parts.flatMap(({ features }) => features).filter(({ madeAt }) => madeAt === station);
  return new Map(
    made.flatMap(({ name, gains }) => {
      const gain = gains?.[setting]?.value;
      return gain === undefined ? [] : [[name, gain] as const];
    }),
  );
}

/** Every coefficient times `factor`. */
export function times(of: ReadonlyMap<string, number>, factor: number): Map<string, number> {
  return new Map([...of].map(([name, value]) => [name, value * factor]));
}
