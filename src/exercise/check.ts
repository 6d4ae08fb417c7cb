import { ChangeError, writtenAt } from '../scenario/changed.ts';
import { suggestion } from '../scenario/nearest.ts';
import type { Finding, Path } from '../scenario/problem.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Exercise, Knob, Prediction, Setting } from './exercise.ts';
import { expectedAt, refusalOf, scenarioAt, startOf } from './setting.ts';
import { NotOfItsKind } from './theories/theory.ts';
import { watchable } from './watched.ts';

type Say = (path: Path, message: string) => void;

/** The ends of a knob, or all that may be chosen. */
const endsOf = (knob: Knob): readonly (number | string)[] =>
  knob.kind === 'number' ? [knob.least, knob.most] : knob.choices.map(({ name }) => name);

/** Says why something cannot be, where it is one of these errors. */
function saying(path: Path, say: Say, attempt: () => void): void {
  try {
    attempt();
  } catch (error) {
    if (!(error instanceof ChangeError || error instanceof NotOfItsKind)) throw error;
    say(path, error.message);
  }
}

function checkPlaces(exercise: Exercise, knob: Knob, say: Say): void {
  const path = ['knobs', knob.name];
  if (knob.kind === 'number')
    for (const at of knob.at) saying([...path, 'at'], say, () => void writtenAt(exercise.raw, at));
  if (knob.kind === 'choice')
    for (const { name, changes } of knob.choices)
      for (const { at } of changes)
        saying([...path, 'choices', name], say, () => void writtenAt(exercise.raw, at));
}

function checkKnob(exercise: Exercise, knob: Knob, { policies }: Scenario, say: Say): void {
  const path = ['knobs', knob.name];
  const refused = refusalOf(knob, knob.starts);
  if (refused !== null) say([...path, 'starts'], refused);
  checkPlaces(exercise, knob, say);
  if (knob.kind !== 'policy') return;
  const known = policies.map(({ name }) => name);
  for (const { name } of knob.choices)
    if (!known.includes(name))
      say([...path, 'policies'], `there is no policy "${name}"${suggestion(name, known)}`);
}

function checkPrediction(exercise: Exercise, prediction: Prediction, path: Path, say: Say): void {
  if (prediction.kind === 'choice') {
    const { choices, right } = prediction;
    if (!choices.includes(right)) say([...path, 'right'], `"${right}" is none of the choices`);
    return;
  }
  const { of, setting } = prediction;
  if (!exercise.watch.includes(of))
    say([...path, 'of'], `"${of}" is not watched${suggestion(of, exercise.watch)}`);
  for (const [name, value] of Object.entries(setting)) {
    const knob = exercise.knobs.find((one) => one.name === name);
    // Where it starts is the knob's own to answer for.
    if (knob?.starts === value) continue;
    const known = exercise.knobs.map((one) => one.name);
    const refused = knob ? refusalOf(knob, value) : `there is no knob "${name}"${suggestion(name, known)}`;
    if (refused !== null) say([...path, 'with', name], refused);
  }
}

/** What is tried before a class gets it: each knob at its ends while the others stand where they start. */
export function* cornersOf(
  exercise: Exercise,
): Generator<{ readonly setting: Setting; readonly knob: Knob }> {
  const start = startOf(exercise);
  for (const knob of exercise.knobs)
    for (const end of endsOf(knob)) yield { setting: { ...start, [knob.name]: end }, knob };
}

/** A page runs what it is asked for, and no pilot before. */
function checkWarmUp({ run }: Scenario, path: Path, say: Say): void {
  if (run.warmUpBy !== 'pilot') return;
  say(
    path,
    'a pilot would have to settle the warm-up anew at every setting; write it as a time, such as the one that ' +
      '"mendline run" of the scenario finds by its pilot',
  );
}

/** What is wrong with an exercise beyond the form of its file, by the line that it is about. */
export function checkExercise(exercise: Exercise, scenario: Scenario): Finding[] {
  const found: Finding[] = [];
  const say: Say = (path, message) => found.push({ path, message });
  const { knobs, watch, predictions, policy, theory } = exercise;
  const policies = scenario.policies.map(({ name }) => name);
  if (!policies.includes(policy))
    say(['policy'], `there is no policy "${policy}"${suggestion(policy, policies)}`);
  const limited = scenario.stocks.filter(({ unlimited }) => !unlimited).map(({ name }) => name);
  const known = watchable(limited).map(({ name }) => name);
  for (const [i, name] of watch.entries())
    if (!known.includes(name)) say(['watch', i], `"${name}" cannot be watched${suggestion(name, known)}`);
  for (const knob of knobs) checkKnob(exercise, knob, scenario, say);
  if (knobs.filter(({ kind }) => kind === 'policy').length > 1)
    say(['knobs'], 'one line follows one policy at a time; keep one knob with "policies"');
  for (const [i, prediction] of predictions.entries())
    checkPrediction(exercise, prediction, ['predict', i], say);
  checkWarmUp(scenario, ['scenario', 'run', 'warm-up'], say);
  if (found.length > 0) return found;
  for (const { setting, knob } of cornersOf(exercise)) {
    const path = ['knobs', knob.name];
    saying(path, say, () => checkWarmUp(scenarioAt(exercise, setting), path, say));
  }
  if (found.length === 0 && theory !== null)
    for (const setting of [startOf(exercise), ...[...cornersOf(exercise)].map((corner) => corner.setting)])
      saying(['theory'], say, () => void expectedAt(exercise, setting));
  return found;
}
