import { suggestion } from '../scenario/nearest.ts';
import type { Finding, Path } from '../scenario/problem.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { checkKnob } from './check-knob.ts';
import type { Exercise, Knob, Prediction, Setting } from './exercise.ts';
import { type Say, saying } from './saying.ts';
import { expectedAt, refusalOf, scenarioAt, startOf } from './setting.ts';
import { watchable } from './watched.ts';

/** The ends of a knob, or all that may be chosen, and by which keys of the knob they are written. */
function endsOf(knob: Knob): readonly { readonly end: number | string; readonly keys: Path }[] {
  if (knob.kind === 'number')
    return (['least', 'most'] as const).map((key) => ({ end: knob[key], keys: [key] }));
  const key = knob.kind === 'choice' ? 'choices' : 'policies';
  return knob.choices.map(({ name }, i) => ({ end: name, keys: [key, knob.kind === 'choice' ? name : i] }));
}

/** @param known all that may be watched */
function checkPrediction(
  exercise: Exercise,
  prediction: Prediction,
  { path, known, say }: { readonly path: Path; readonly known: readonly string[]; readonly say: Say },
): void {
  if (prediction.kind === 'choice') {
    const { choices, right } = prediction;
    if (!choices.includes(right)) say([...path, 'right'], `"${right}" is none of the choices`);
    return;
  }
  const { of, setting } = prediction;
  // Where something is watched that cannot be, that may be what was meant.
  const misspelt = known.includes(of) && exercise.watch.some((name) => !known.includes(name));
  if (!exercise.watch.includes(of) && !misspelt)
    say([...path, 'of'], `"${of}" is not watched${suggestion(of, exercise.watch)}`);
  for (const [name, value] of Object.entries(setting)) {
    const knob = exercise.knobs.find((one) => one.name === name);
    // Where it starts is the knob's own to answer for.
    if (knob?.starts === value) continue;
    const names = exercise.knobs.map((one) => one.name);
    const refused = knob ? refusalOf(knob, value) : `there is no knob "${name}"${suggestion(name, names)}`;
    if (refused !== null) say([...path, 'with', name], refused);
  }
}

/** What is tried before a class gets it: each knob at its ends while the others stand where they start. */
export function* cornersOf(
  exercise: Exercise,
): Generator<{ readonly setting: Setting; readonly path: Path }> {
  const start = startOf(exercise);
  for (const knob of exercise.knobs)
    for (const { end, keys } of endsOf(knob))
      yield { setting: { ...start, [knob.name]: end }, path: ['knobs', knob.name, ...keys] };
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
    checkPrediction(exercise, prediction, { path: ['predict', i], known, say });
  checkWarmUp(scenario, ['scenario', 'run', 'warm-up'], say);
  if (found.length > 0) return found;
  saying(['knobs'], say, () => void scenarioAt(exercise, startOf(exercise)));
  if (found.length > 0) return found;
  for (const { setting, path } of cornersOf(exercise))
    saying(path, say, () => checkWarmUp(scenarioAt(exercise, setting), path, say));
  if (found.length === 0 && theory !== null)
    for (const setting of [startOf(exercise), ...[...cornersOf(exercise)].map((corner) => corner.setting)])
      saying(['theory'], say, () => void expectedAt(exercise, setting));
  return found;
}
