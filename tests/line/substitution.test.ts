import { expect, it } from 'vitest';
import { Intake } from '../../src/line/intake.ts';
import { Substitution } from '../../src/line/substitution.ts';

it('turns every intake to what is in the place of its stock, and wakes its station only if that is another', () => {
  const seen: string[] = [];
  const intake = (kinds: string[]) =>
    new Intake(
      kinds,
      () => seen.push('wake'),
      (place) => seen.push(kinds[place]!),
    );
  const substitution = new Substitution();
  substitution.intakes.push(intake(['a', 'b', 'c']), intake(['b', 'c']));
  substitution.set('b', 'c');
  expect(seen.splice(0)).toEqual(['c', 'wake']);
  substitution.set('a', 'b');
  expect(seen.splice(0)).toEqual(['c', 'wake']);
  substitution.set('b', null);
  expect(seen.splice(0)).toEqual(['b', 'wake', 'b', 'wake']);
  substitution.set('a', null);
  expect(seen.splice(0)).toEqual(['a', 'wake']);
});
