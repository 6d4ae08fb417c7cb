import { describe, expect, it } from 'vitest';
import { caseNames, crossedRuns, planCrossed } from '../../src/experiment/plan-crossed.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { outcome } from '../report/fake.ts';
import { SOUND } from '../scenario/sample.ts';

const CROSSING = { cases: ['cold', 'late'], severities: [0, 1, 2], policies: ['a', 'b'] };
const tasks = planCrossed(CROSSING, 2);

describe('the plan of a crossed experiment', () => {
  it('has each case at each severity, and the twin once for all, seed by seed', () => {
    const told = tasks.map(({ policy, seed, variant }) =>
      variant!.disturbed
        ? `${policy}${seed} ${variant!.case} ${variant!.severity}`
        : `${policy}${seed} undisturbed`,
    );
    expect(told.slice(0, 6)).toEqual([
      'a1 undisturbed',
      'a1 cold 1',
      'a1 cold 2',
      'a1 late 1',
      'a1 late 2',
      'b1 undisturbed',
    ]);
    expect(new Set(told).size).toBe(2 * 2 * 5);
    expect(tasks.findIndex(({ seed }) => seed === 2)).toBe(10);
  });

  it('has no twin where severity 0 is not asked for', () => {
    const plain = planCrossed({ ...CROSSING, severities: [1] }, 1);
    expect(plain).toHaveLength(4);
    expect(plain.every(({ variant }) => variant!.disturbed)).toBe(true);
  });

  it('knows the cases by their names', () => {
    expect(caseNames(parseScenario(SOUND, 'cell.yaml'))).toContain('all together');
  });
});

describe('the runs of a crossed experiment', () => {
  const done = tasks.map((task) => ({ task, outcome: outcome(task.policy, task.seed) }));
  const runs = crossedRuns(CROSSING, done);

  it('go by case, severity, policy and seed, with the twin in every case', () => {
    const told = runs.map((run) => `${run.case} ${run.severity} ${run.outcome.policy}${run.outcome.seed}`);
    expect(told.slice(0, 5)).toEqual(['cold 0 a1', 'cold 0 a2', 'cold 0 b1', 'cold 0 b2', 'cold 1 a1']);
    expect(told).toHaveLength(2 * 3 * 2 * 2);
    expect(runs.find((run) => run.case === 'late')!.outcome).toBe(runs[0]!.outcome);
  });

  it('are those that there are, where some were cut short', () => {
    const some = crossedRuns(CROSSING, done.slice(0, 2));
    expect(some.map((run) => `${run.case} ${run.severity}`)).toEqual(['cold 0', 'cold 1', 'late 0']);
  });
});
