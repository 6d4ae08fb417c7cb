import { findings, valueAt } from '../scenario/findings.ts';
import { parseJoined, readRaw, type Source } from '../scenario/parse.ts';
import { type Finding, locate, ScenarioError } from '../scenario/problem.ts';
import type { Raw } from '../scenario/raw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { readYaml } from '../scenario/yaml-text.ts';
import { checkExercise } from './check.ts';
import type { Exercise, Knob, Prediction } from './exercise.ts';
import { type ExerciseSpec, exerciseSchema, type KnobSpec, type PredictionSpec } from './schema.ts';
import { settingText, startOf } from './setting.ts';
import { failureAtStart } from './tried-out.ts';

function knobOf([name, spec]: [string, KnobSpec]): Knob {
  if ('at' in spec) {
    const { at, unit = '', ...limits } = spec;
    return { kind: 'number', name, at: [at].flat(), unit, ...limits };
  }
  if ('policies' in spec)
    return { kind: 'policy', name, choices: spec.policies.map((name) => ({ name })), starts: spec.starts };
  const choices = Object.entries(spec.choices).map(([choice, places]) => ({
    name: choice,
    changes: Object.entries(places).map(([at, is]) => ({ at, is })),
  }));
  return { kind: 'choice', name, choices, starts: spec.starts };
}

function predictionOf(spec: PredictionSpec, knobs: readonly Knob[]): Prediction {
  if ('choices' in spec) return { kind: 'choice', ...spec };
  const { asks, of, with: turned = {} } = spec;
  return {
    kind: 'number',
    asks,
    of,
    setting: { ...startOf({ knobs }), ...turned } as Record<string, number>,
  };
}

function exerciseOf(spec: ExerciseSpec, raw: Raw, { policies }: Scenario): Exercise {
  const { exercise: _, scenario: __, predict, knobs: given, theory = null, policy, ...rest } = spec;
  const knobs = Object.entries(given).map(knobOf);
  const predictions = predict.map((one) => predictionOf(one, knobs));
  return { ...rest, policy: policy ?? policies[0]!.name, predictions, knobs, raw, theory };
}

/** The line of an exercise, or what was found wrong with it. */
interface Line {
  readonly raw: Raw;
  readonly scenario: Scenario | null;
  readonly found: readonly Finding[];
}

function lineOf(given: ExerciseSpec['scenario'], read: (path: string) => Source): Line {
  if (typeof given === 'string') return { ...parseJoined(read(given), []), found: [] };
  const raw = given as Raw;
  const { scenario, found } = readRaw(raw);
  return {
    raw,
    scenario,
    found: found.map((finding) => ({ ...finding, path: ['scenario', ...finding.path] })),
  };
}

/** What a file of an exercise opens with. */
const OPENS = 'an exercise starts with "exercise: 1"';

const A_SCENARIO: Finding = {
  path: [],
  message: 'this is a scenario; an exercise names one under "scenario", and opens with "exercise: 1"',
};

/** From the root of a disk, as either kind of system writes it. */
const ABSOLUTE = /^([/\\]|[a-z]:)/i;

const elsewhere = (path: string): Finding => ({
  path: ['scenario'],
  message: `"${path}" is a place on this machine alone: relative paths only, from the folder of this file, such as ../line.yaml`,
});

const isScenario = (raw: unknown): boolean =>
  typeof raw === 'object' && raw !== null && 'stations' in raw && !('exercise' in raw);

/** What was found wrong with the form of a file; in another version of the format all else may be right. */
function ofForm(found: readonly Finding[], raw: unknown): readonly Finding[] {
  const ofVersion = found.filter(({ path }) => path[0] === 'exercise');
  return ofVersion.length > 0 && valueAt(raw, ['exercise']) !== undefined ? ofVersion : found;
}

/**
 * Reads the text of an exercise, and runs the line where all knobs start.
 * @param read gives the file of a scenario by its path from that of the exercise
 * @throws ScenarioError listing every problem of the text with its line and column, or those of the scenario it names
 */
export function parseExercise({ source, text }: Source, read: (path: string) => Source): Exercise {
  const refuse = (problems: ScenarioError['problems']) => new ScenarioError([{ source, text, problems }]);
  const yaml = readYaml(text.replace(/^\uFEFF/, ''), OPENS);
  if ('problems' in yaml) throw refuse(yaml.problems);
  const refuseFound = (found: readonly Finding[]) => refuse(locate(found, yaml.document, yaml.lines));
  if (isScenario(yaml.raw)) throw refuseFound([A_SCENARIO]);
  const result = exerciseSchema.safeParse(yaml.raw);
  if (!result.success) throw refuseFound(ofForm(findings(result.error, yaml.raw), yaml.raw));
  const named = result.data.scenario;
  if (typeof named === 'string' && ABSOLUTE.test(named)) throw refuseFound([elsewhere(named)]);
  const { raw, scenario, found } = lineOf(named, read);
  if (scenario === null) throw refuseFound(found);
  const exercise = exerciseOf(result.data, raw, scenario);
  const wrong = checkExercise(exercise, scenario);
  if (wrong.length > 0) throw refuseFound(wrong);
  const failure = failureAtStart(exercise);
  if (failure !== null) {
    const where = settingText(exercise, startOf(exercise));
    throw refuseFound([
      { path: ['knobs'], message: `where the knobs start (${where}) the line cannot run: ${failure}` },
    ]);
  }
  return exercise;
}
