import { expect, it } from 'vitest';
import { Claims } from '../../src/line/claims.ts';

it('of several that claim a thing the last entered has its way, and nobody when none does; each change is told once', () => {
  const seen: string[] = [];
  const claims = new Claims('none', (value) => seen.push(value));
  const first = claims.enter('first');
  const second = claims.enter('second');
  first(true);
  second(true);
  first(false);
  first(true);
  second(false);
  first(false);
  expect(seen).toEqual(['first', 'second', 'first', 'none']);
});
