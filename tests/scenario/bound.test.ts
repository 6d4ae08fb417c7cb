import { expect, it } from 'vitest';
import { boundLast, boundOf } from '../../src/scenario/bound.ts';
import type { PolicySpec } from '../../src/scenario/scenario.ts';

const bound: PolicySpec = { name: 'foresight', responses: [{ do: 'foresee' }] };
const others = ['carry on', 'other'].map((name): PolicySpec => ({ name, responses: [] }));

it('a bound is found, and put last', () => {
  expect(boundOf(others)).toBeNull();
  expect(boundLast(others)).toEqual(others);
  const all = [others[0]!, bound, others[1]!];
  expect(boundOf(all)).toBe('foresight');
  expect(boundLast(all).map(({ name }) => name)).toEqual(['carry on', 'other', 'foresight']);
});
