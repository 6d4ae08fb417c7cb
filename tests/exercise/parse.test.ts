import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { exerciseJsonSchema } from '../../src/exercise/json-schema.ts';
import { parseExercise } from '../../src/exercise/parse.ts';
import { rawAt, scenarioAt, startOf } from '../../src/exercise/setting.ts';
import { failingEnds } from '../../src/exercise/tried-out.ts';
import { ScenarioError } from '../../src/scenario/problem.ts';

const text = readFileSync('scenarios/exercises/buffer.yaml', 'utf8');
const none = () => {
  throw new Error('no file is named');
};
const read = (text: string) => parseExercise({ source: 'exercise.yaml', text }, none);

/** What is said of a text, as `line:column: message`. */
function problemsOf(text: string, reading: (text: string) => unknown = read): string[] {
  try {
    reading(text);
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    return error.problems.map(({ line, column, message }) => `${line}:${column}: ${message}`);
  }
  return [];
}

/** What is said of the shipped exercise once `from` is `to` in it. */
function refusal(from: string, to: string): string {
  const changed = text.replace(from, to);
  expect(changed).not.toBe(text);
  return problemsOf(changed).join('\n');
}

const lineOf = (part: string) => text.slice(0, text.indexOf(part)).split('\n').length;

it('turns knobs at their places', () => {
  const exercise = read(text);
  const setting = { ...startOf(exercise), 'places between': 7, 'mean time of assembly': 45 };
  const assembly = scenarioAt(exercise, setting).stations.find(({ name }) => name === 'assembly');
  expect(assembly).toMatchObject({ buffer: { places: 7 }, cycle: { mean: 45 } });
  expect(rawAt(exercise, setting)).toMatchObject({ stations: { assembly: { cycle: { mean: '45 s' } } } });
});

it('reads the line from a file that it names', () => {
  const scenario = JSON.stringify(read(text).raw);
  const beside = text.replace(/^scenario:[\s\S]*?(?=^knobs:)/m, 'scenario: line.yaml\n');
  const exercise = parseExercise({ source: 'exercise.yaml', text: beside }, (path) => {
    expect(path).toBe('line.yaml');
    return { source: path, text: scenario };
  });
  expect(exercise).toEqual(read(text));
});

it.each([
  [
    'a knob at no place',
    'at: stations/assembly/buffer',
    'at: stations/asembly/buffer',
    'did you mean "assembly"?',
  ],
  [
    'ends the wrong way round',
    'least: 0\n    most: 20',
    'least: 20\n    most: 0',
    '"least" must lie below "most"',
  ],
  [
    'a start beyond the ends',
    'starts: 1\n',
    'starts: 21\n',
    '"places between" goes from 0 to 20 in steps of 1',
  ],
  [
    'a start between two steps',
    'starts: 60\n',
    'starts: 61\n',
    '"mean time of assembly" goes from 40 to 80 s',
  ],
  ['an end that breaks the line', 'least: 0\n    most: 20', 'least: -4\n    most: 20', 'this is no scenario'],
  ['an unknown measure', 'watch: [throughput,', 'watch: [througput,', 'did you mean "throughput"?'],
  ['an unknown formula', 'theory: two exp', 'theory: too exp', 'did you mean "two exponential stations"?'],
  [
    'a formula of another line',
    'theory: two exponential stations',
    'theory: a drifting feature',
    'expected forming',
  ],
  ['an answer that is no choice', 'right: less than that', 'right: half', '"half" is none of the choices'],
  ['a prediction of what is not watched', 'of: throughput', 'of: fit rate', '"fit rate" is not watched'],
  [
    'a prediction at no knob',
    'with: { places between: 1 }',
    'with: { places: 1 }',
    'there is no knob "places"',
  ],
  ['a key that it does not have', 'seeds: 30 }', 'seeds: 30, sedes: 3 }', 'sedes'],
  ['a fault of the line', 'does: work\n      takes', 'does: wrok\n      takes', 'did you mean "work"?'],
  ['a warm-up by a pilot, which a page has not', 'warm-up: 8 h', 'warm-up: by-pilot', 'write it as a time'],
  [
    'a choice of it',
    'knobs:\n',
    'knobs:\n  start: { choices: { found: { run/warm-up: by-pilot }, none: { run/warm-up: none } }, starts: found }\n',
    'write it as a time',
  ],
  ['another format', 'exercise: 1', 'exercise: 2', 'expected the version of the exercise format, 1'],
  [
    'a place on one machine',
    /^scenario:[\s\S]*?(?=^knobs:)/m.exec(text)![0],
    'scenario: /lines/line.yaml\n',
    '"/lines/line.yaml" is a place on this machine alone: relative paths only',
  ],
  ['no knobs', /^knobs:[\s\S]*?(?=^watch)/m.exec(text)![0], 'knobs: {}\n', 'expected at least one knob'],
])('refuses %s, and says where', (_, from, to, said) => {
  const found = refusal(from, to);
  expect(found).toContain(said);
  const lines = found.split('\n').map((problem) => Number(problem.split(':')[0]));
  const near = lines.filter((line) => Math.abs(line - lineOf(from)) <= 3);
  expect(near, found).not.toEqual([]);
});

it.each([
  [
    'another version, whose other keys may be right',
    text.replace('exercise: 1', 'exercise: 2').replace(/^(title|knobs|watch):/gm, 'the $&'),
    [`${lineOf('exercise: 1')}:11: expected the version of the exercise format, 1`],
  ],
  [
    'a misspelt measure, once where it is written',
    text.replace('watch: [throughput,', 'watch: [troughput,'),
    [`${lineOf('watch:')}:9: "troughput" cannot be watched; did you mean "throughput"?`],
  ],
  [
    'a unit that a place does not take, once where it is written',
    text.replace('    unit: s\n', '    unit: kg\n'),
    [
      `${lineOf('    unit: s\n')}:11: "60 kg": expected a time with its unit (s, ms, min, h, d), such as 42 s`,
    ],
  ],
  [
    'a unit that is missing, once',
    text.replace('    unit: s\n', ''),
    [
      expect.stringMatching(
        new RegExp(`^${lineOf('  mean time of assembly:')}:3: 60.*expected a time with its unit`),
      ),
    ],
  ],
  ['an empty file', '# nothing\n', ['1:1: the file is empty; an exercise starts with "exercise: 1"']],
])('tells of %s alone', (_, changed, told) => {
  expect(changed).not.toBe(text);
  expect(problemsOf(changed)).toEqual(told);
});

const KNOTTED = `exercise: 1
title: Knotted
teaches: That a circle of full buffers stands still.
source: invented
question: How many?
predict: [{ asks: How many?, of: throughput }]
scenario: knotted.yaml
knobs:
  places: { at: stations/bench/buffer, least: 1, most: 10001, step: 10000, starts: 10001 }
watch: [throughput]
seeds: 2
discussion: None.
`;
const readKnotted = (text: string) =>
  parseExercise({ source: 'exercise.yaml', text }, (path) => ({
    source: path,
    text: readFileSync(`scenarios/${path}`, 'utf8'),
  }));

it('refuses an exercise whose line stands still where the knobs start', () => {
  const problems = problemsOf(KNOTTED.replace('starts: 10001', 'starts: 1'), readKnotted);
  expect(problems).toEqual([
    expect.stringMatching(/^8:1: where the knobs start \(places 1\) the line cannot/),
  ]);
  expect(problems[0]).toContain('waits for room in front of');
});

it('finds at which ends of the knobs a line stands still', () => {
  expect(failingEnds(read(text))).toEqual([]);
  expect(failingEnds(readKnotted(KNOTTED))).toEqual([
    { setting: { places: 1 }, why: expect.stringContaining('waits for room in front of') },
  ]);
});

it('refuses more text than a person writes', () => {
  expect(() => read(`${text}#${' '.repeat(10_000_000)}`)).toThrow(ScenarioError);
});

it('has a schema that takes what ships, and that stands beside it', () => {
  const schema = JSON.parse(readFileSync('scenarios/exercises/exercise.schema.json', 'utf8'));
  expect(schema).toEqual(JSON.parse(JSON.stringify(exerciseJsonSchema())));
  const check = new Ajv2020({ strict: false }).compile(schema);
  const data = parse(text);
  expect([check(data), check.errors]).toEqual([true, null]);
  expect(check({ ...data, watch: [] })).toBe(false);
  expect(check({ ...data, knobs: { places: { at: 'a/b' } } })).toBe(false);
});
