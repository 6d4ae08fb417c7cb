import { expect, it } from 'vitest';
import { type Attempt, NEW_ATTEMPT } from '../../../src/exercise/attempt.ts';
import { startOf } from '../../../src/exercise/setting.ts';
import { watchable } from '../../../src/exercise/watched.ts';
import { answersCsv, answersJson, countedIn } from '../../../src/report/classroom/answers.ts';
import { SHIPPED } from '../../exercise/shipped.ts';

const exercise = SHIPPED.find(([name]) => name === 'buffer.yaml')![1];
const MADE_FROM = { version: '1', sha256: 'a', scenario: null };
const start = startOf(exercise);
/** Throughput, work in progress and lead time of two runs: 44 and 46 good an hour, 150 and 210 s. */
const attempt: Attempt = {
  ...NEW_ATTEMPT,
  name: '=HYPERLINK("x")',
  predictions: ['50', 'less than that'],
  tried: [
    {
      setting: start,
      runs: [
        [44, 2, 150],
        [46, 3, 210],
      ],
      failure: null,
    },
    { setting: { ...start, 'places between': 0 }, runs: [], failure: 'it stood still' },
  ],
};

it('gives every number its unit, and beside it what the page shows', () => {
  const { settings, predictions } = answersJson(exercise, attempt, MADE_FROM);
  expect(predictions[0]).toMatchObject({ of: 'throughput', predicted: 50, unit: 'good /h' });
  expect(predictions[1]).toEqual({ asks: expect.any(String), predicted: 'less than that' });
  expect(settings[0]!.knobs).toEqual([
    { name: 'places between', value: 1, unit: null },
    { name: 'mean time of assembly', value: 60, unit: 's' },
  ]);
  const [throughput, , lead] = settings[0]!.measures;
  expect(throughput).toMatchObject({ name: 'throughput', unit: 'good /h', mean: 45, runs: 2, theory: null });
  // 180 s are 3 min.
  expect(lead).toMatchObject({ unit: 's', mean: 180, shown: { unit: 'min', theory: null } });
  expect(Number(lead!.shown.mean)).toBe(3);
  expect(settings[1]).toMatchObject({ failure: 'it stood still', measures: [] });
});

it('holds the theory once it is revealed', () => {
  const [first] = answersJson(exercise, { ...attempt, revealed: true }, MADE_FROM).settings;
  // (B + 2)/(B + 3) of 60 an hour with B = 1 place: G. C. Hunt (1956).
  expect(first!.measures[0]!.theory).toBeCloseTo(45, 9);
  expect(Number(first!.measures[0]!.shown.theory)).toBeCloseTo(45, 0);
});

it('knows what the engine counts in of all that is shown by a factor', () => {
  for (const watched of watchable(['frame']))
    expect([watched.name, countedIn(watched) !== watched.shown.unit]).toEqual([
      watched.name,
      watched.shown.factor !== 1,
    ]);
});

it('is a table with a row for each measure at each setting, where nothing is run as a formula', () => {
  const rows = answersCsv(exercise, attempt).trimEnd().split('\r\n');
  expect(rows[0]).toBe(
    'exercise,name,setting,places between,"mean time of assembly, s",policy,runs,failure,measure,unit,mean,lower,upper,theory,predicted',
  );
  expect(rows).toHaveLength(1 + exercise.watch.length + 1);
  expect(rows[1]).toContain(`,"'=HYPERLINK(""x"")",1,1,60,carry on,2,,throughput,good /h,45,`);
  expect(rows[1]).toMatch(/,50$/);
  expect(rows[3]).toMatch(/,lead time,min,3,/);
  expect(rows[4]).toContain('it stood still');
});
