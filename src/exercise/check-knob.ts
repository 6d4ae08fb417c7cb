import { changedRaw, writtenAt } from '../scenario/changed.ts';
import { suggestion } from '../scenario/nearest.ts';
import { readRaw } from '../scenario/parse.ts';
import type { Raw } from '../scenario/raw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Exercise, Knob, NumberKnob } from './exercise.ts';
import { type Say, saying } from './saying.ts';
import { refusalOf, scenarioAt, valueText } from './setting.ts';

function checkPlaces(exercise: Exercise, knob: Knob, say: Say): void {
  const path = ['knobs', knob.name];
  if (knob.kind === 'number')
    for (const at of knob.at) saying([...path, 'at'], say, () => void writtenAt(exercise.raw, at));
  if (knob.kind === 'choice')
    for (const { name, changes } of knob.choices)
      for (const { at } of changes)
        saying([...path, 'choices', name], say, () => void writtenAt(exercise.raw, at));
}

/** What is said of the scenario's value at a place once it is this number in the knob's unit; undefined where nothing is. */
function saidOf(raw: Raw, at: string, knob: NumberKnob, number: number): string | undefined {
  const is = knob.unit === '' ? number : valueText(knob, number);
  const { found } = readRaw(changedRaw(raw, [{ at, is }]));
  return found.find(({ path }) => path.map(String).join('/') === at)?.message;
}

/** Why the unit fits no place of the knob: the number that is written there does not hold in it either. */
function unitFault(raw: Raw, knob: NumberKnob): string | undefined {
  for (const at of knob.at) {
    const written = Number.parseFloat(String(writtenAt(raw, at)));
    const said = saidOf(raw, at, knob, knob.starts);
    if (said !== undefined && saidOf(raw, at, knob, written) !== undefined) return said;
  }
  return undefined;
}

/** What is wrong with a knob, wherever the others stand. */
export function checkKnob(exercise: Exercise, knob: Knob, { policies }: Scenario, say: Say): void {
  const path = ['knobs', knob.name];
  const refused = refusalOf(knob, knob.starts);
  if (refused !== null) say([...path, 'starts'], refused);
  let placed = true;
  checkPlaces(exercise, knob, (...finding) => {
    placed = false;
    say(...finding);
  });
  if (knob.kind === 'policy') {
    const known = policies.map(({ name }) => name);
    for (const { name } of knob.choices)
      if (!known.includes(name))
        say([...path, 'policies'], `there is no policy "${name}"${suggestion(name, known)}`);
    return;
  }
  if (refused !== null || !placed) return;
  const fault = knob.kind === 'number' ? unitFault(exercise.raw, knob) : undefined;
  if (fault !== undefined) return say([...path, 'unit'], fault);
  const alone = { ...exercise, knobs: [knob] };
  saying([...path, 'starts'], say, () => void scenarioAt(alone, { [knob.name]: knob.starts }));
}
