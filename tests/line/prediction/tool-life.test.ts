import { expect, it } from 'vitest';
import { toolLife } from '../../../src/line/prediction/tool-life.ts';
import { cell } from './cell.ts';

function lifeOf(trimming: string) {
  const scenario = cell({
    trimming,
    others: '      tab: { nominal: 5 mm, made-at: trimming, wear: { per: 100, shift: 0.1 mm } }',
  });
  const spec = scenario.stations.find(({ does }) => does === 'trim')!;
  return spec.does === 'trim' ? toolLife(spec, scenario) : null;
}

// A cut takes 1 s: by working time it is as many cuts as seconds.
it.each([
  ['set-ups: { new: { cycles: 40, takes: 1 s } }, tool: { renewed-by: [new] }', 40],
  ['maintenance: { new: { every: 90 s, counted: working, takes: 1 s } }, tool: { renewed-by: [new] }', 90],
])('a tool with %s makes %d cuts', (trimming, cuts) => expect(lifeOf(trimming)).toBe(cuts));

it.each([
  ['', 'never renewed'],
  [
    'set-ups: { new: { cycles: 40, takes: 1 s }, other: { cycles: 30, takes: 1 s } }, tool: { renewed-by: [new, other] }',
    'more than one event',
  ],
  [
    'breakdowns: { dull: { every: 1 h, counted: working, repair: 1 min, cycle: resumes } }, tool: { renewed-by: [dull] }',
    'breaks down',
  ],
  ['set-ups: { new: { every: 1 h, counted: clock, takes: 1 s } }, tool: { renewed-by: [new] }', 'on the run'],
  [
    'set-ups: { new: { every: { distribution: exponential, mean: 1 h }, counted: working, takes: 1 s } }, tool: { renewed-by: [new] }',
    'on the run',
  ],
])('with "%s" that is not settled', (trimming, why) => {
  expect(lifeOf(trimming)).toEqual({ why: expect.stringContaining(why) });
});
