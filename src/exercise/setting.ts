import { type Change, changedRaw } from '../scenario/changed.ts';
import { parseChanged } from '../scenario/parse.ts';
import type { Raw } from '../scenario/raw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Exercise, Knob, NumberKnob, Setting } from './exercise.ts';
import { theoryNamed } from './theories/index.ts';

/** Where all knobs stand at first. */
export const startOf = ({ knobs }: Pick<Exercise, 'knobs'>): Setting =>
  Object.fromEntries(knobs.map(({ name, starts }) => [name, starts]));

const unitOf = ({ unit }: NumberKnob) => (unit === '' ? '' : ` ${unit}`);

/** Whether all knobs stand alike. */
export const sameSetting = ({ knobs }: Pick<Exercise, 'knobs'>, one: Setting, other: Setting): boolean =>
  knobs.every(({ name }) => one[name] === other[name]);

/** A knob's value with its unit. */
export const valueText = (knob: Knob, value: number | string): string =>
  knob.kind === 'number' ? `${value}${unitOf(knob)}` : String(value);

/** The values in the order of the knobs, such as `buffer 3, cycle 60 s`. */
export const settingText = ({ knobs }: Pick<Exercise, 'knobs'>, setting: Setting): string =>
  knobs.map((knob) => `${knob.name} ${valueText(knob, setting[knob.name]!)}`).join(', ');

/** Why a knob cannot stand there; null where it can. */
export function refusalOf(knob: Knob, value: unknown): string | null {
  if (knob.kind !== 'number') {
    const known = knob.choices.map(({ name }) => name);
    return known.some((name) => name === value) ? null : `"${knob.name}" is one of ${known.join(', ')}`;
  }
  const { name, least, most, step } = knob;
  const from = `"${name}" goes from ${least} to ${most}${unitOf(knob)} in steps of ${step}`;
  if (typeof value !== 'number' || !Number.isFinite(value) || value < least || value > most) return from;
  const steps = (value - least) / step;
  // Steps are written in decimal and counted in binary.
  return Math.abs(steps - Math.round(steps)) < 1e-6 ? null : from;
}

/** What a knob writes into the scenario. */
function changesBy(knob: Knob, value: number | string): readonly Change[] {
  if (knob.kind === 'policy') return [];
  if (knob.kind === 'choice') return knob.choices.find(({ name }) => name === value)!.changes;
  const is = knob.unit === '' ? Number(value) : valueText(knob, value);
  return knob.at.map((at) => ({ at, is }));
}

type Line = Pick<Exercise, 'knobs' | 'raw' | 'policy'>;

const changesOf = ({ knobs }: Line, setting: Setting): Change[] =>
  knobs.flatMap((knob) => changesBy(knob, setting[knob.name]!));

/** The data of the scenario with all knobs where they stand. @throws ChangeError */
export const rawAt = (exercise: Line, setting: Setting): Raw =>
  changedRaw(exercise.raw, changesOf(exercise, setting));

/** The scenario with all knobs where they stand. @throws ChangeError */
export const scenarioAt = (exercise: Line, setting: Setting): Scenario =>
  parseChanged(exercise.raw, changesOf(exercise, setting));

/** The policy that is followed. */
export function policyAt({ knobs, policy }: Line, setting: Setting): string {
  const knob = knobs.find(({ kind }) => kind === 'policy');
  return knob === undefined ? policy : String(setting[knob.name]);
}

/**
 * What theory expects of what may be watched, with all knobs where they stand; null where it expects nothing.
 * @throws ChangeError, NotOfItsKind
 */
export function expectedAt(
  exercise: Line & Pick<Exercise, 'theory'>,
  setting: Setting,
): Readonly<Record<string, number>> | null {
  const theory = exercise.theory === null ? undefined : theoryNamed(exercise.theory);
  return theory?.values(scenarioAt(exercise, setting), policyAt(exercise, setting)) ?? null;
}
