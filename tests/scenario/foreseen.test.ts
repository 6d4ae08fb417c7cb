import { describe, expect, it } from 'vitest';
import { effectOf } from '../../src/disturbance/effects.ts';
import { prepare } from '../../src/experiment/simulate.ts';
import { Course } from '../../src/line/upset.ts';
import { foreseen, isAverted } from '../../src/scenario/foreseen.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { EVERY } from '../disturbance/every-disturbance.ts';
import { changed } from './sample.ts';

const every = parseScenario(EVERY, 'every.yaml');
const averted = (text: string) =>
  parseScenario(text, 'every.yaml')
    .disturbances.filter(isAverted)
    .map(({ name }) => name);

describe('what foresight averts', () => {
  it('is all that a fix could end, and what suppliers do', () => {
    const line = prepare({ ...every, disturbances: [] }, 'carry on', 1);
    const curable = every.disturbances.filter(
      (spec) => effectOf(spec, { line, course: new Course(), draw: () => () => 0 }).curedAt !== undefined,
    );
    const supplied = every.disturbances.filter(
      ({ disturbs }) => disturbs === 'supplier' || disturbs === 'lot',
    );
    expect(new Set(every.disturbances.filter(isAverted))).toEqual(new Set([...curable, ...supplied]));
    expect(
      foreseen(every)
        .disturbances.map(({ disturbs }) => disturbs)
        .sort(),
    ).toEqual(['conveyor', 'crew', 'demand', 'health', 'station'].sort());
  });

  it('is not what can only help', () => {
    const tired = 'tired: { disturbs: speed, station: forming, to: 70 %';
    const off = 'off: { disturbs: feature, feature: rim, by: 0.2 mm, spread: 150 %';
    const knocked = 'bias: 0.05 mm, spread: 300 %';
    const all = averted(EVERY);
    expect(all).toEqual(expect.arrayContaining(['tired', 'off', 'knocked']));
    const without = (text: string) => all.filter((name) => !averted(text).includes(name));
    expect(without(changed('to: 70 %, ramp', 'to: 100 %, ramp', EVERY))).toEqual(['tired']);
    expect(
      without(
        changed(tired, tired.replace('70 %', '{ distribution: uniform, low: 110 %, high: 300 % }'), EVERY),
      ),
    ).toEqual(['tired']);
    expect(
      without(
        changed(tired, tired.replace('70 %', '{ distribution: uniform, low: 90 %, high: 300 % }'), EVERY),
      ),
    ).toEqual([]);
    expect(without(changed(off, off.replace('by: 0.2 mm, spread: 150 %', 'spread: 50 %'), EVERY))).toEqual([
      'off',
    ]);
    expect(without(changed(off, off.replace('150 %', '50 %'), EVERY))).toEqual([]);
    expect(without(changed(knocked, 'spread: 30 %', EVERY))).toEqual(['knocked']);
  });

  it('leaves a scenario of which nothing is averted as it is', () => {
    const calm = { ...every, disturbances: every.disturbances.filter((it) => !isAverted(it)) };
    expect(foreseen(calm)).toEqual(calm);
  });
});
