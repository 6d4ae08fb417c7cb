import { kebab } from '../../scenario/fields.ts';
import { routesOf } from '../../scenario/routes.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { StationSpec } from '../../scenario/stations.ts';
import { must } from './theory.ts';

/** What is there where a key is left out, unless that is nothing. */
const LEFT_OUT: Readonly<Record<string, unknown>> = {
  ...{ machines: 1, speed: 1, batch: 1, perSheet: 1, appraisers: 1, mateTries: 1, meanOf: 1 },
  withoutMates: 'wait',
};

const isLeftOut = (key: string, value: unknown): boolean =>
  value === undefined ||
  value === null ||
  value === false ||
  (Array.isArray(value) && value.length === 0) ||
  value === (LEFT_OUT[key] ?? 0);

/**
 * Holds an entry of a scenario to the keys that a formula reads, and to those that make no difference to it. All others
 * must be left out, so that a formula is never said to hold for what it knows nothing of.
 * @throws NotOfItsKind
 */
export function mustHaveOnly(read: readonly string[], entry: object, what: string): void {
  for (const [key, value] of Object.entries(entry))
    if (!read.includes(key)) must(isLeftOut(key, value), `"${kebab(key)}" of ${what} is to be left out`);
}

/** What becomes of parts while a station is down or its shift ends makes no difference where neither happens in between. */
const OF_ANY_STATION = ['name', 'does', 'to', 'cycle', 'whileDown', 'shiftEnd'];

/** Holds a station to its cycle and the keys that a formula reads, and to one way on. @throws NotOfItsKind */
export function mustBePlain(station: StationSpec, next: string, read: readonly string[]): void {
  const { name } = station;
  mustHaveOnly([...OF_ANY_STATION, ...read], station, `"${name}"`);
  const [to, ...others] = routesOf(station);
  const goesOn = next === 'good' ? 'finished goods' : `"${next}"`;
  must(to === next && others.length === 0, `"${name}" is to feed ${goesOn} and nothing else`);
}

/**
 * Holds a line to what its stations do by themselves, in the long run.
 * @param answered what a policy may do, since the formula reads it
 * @throws NotOfItsKind
 */
export function mustBeUndisturbed(
  { disturbances, demand, carriers, policies, run }: Scenario,
  policy: string,
  answered: readonly string[] = [],
): void {
  must(disturbances.length === 0, 'nothing is to disturb the line');
  must(demand === null, 'all that is made is to be taken: "demand" is to be left out');
  must(carriers.length === 0, 'parts are to go by themselves: "carriers" is to be left out');
  for (const { do: does } of policies.find(({ name }) => name === policy)!.responses)
    must(answered.includes(does), `"${policy}" is not to "${does}"`);
  must(run.warmUp > 0, 'the formula is of the long run: "run" is to have a "warm-up"');
}
