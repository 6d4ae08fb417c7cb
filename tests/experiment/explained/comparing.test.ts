import { expect, it } from 'vitest';
import { Comparing } from '../../../src/experiment/explained/comparing.ts';
import { observe } from '../../../src/experiment/observe.ts';
import { cell } from '../../line/prediction/cell.ts';

const runs = [1, 2, 3, 4].map((seed) => observe(cell({ rim: 'tolerance: 1 mm, own-sd: 0.1 mm' }), seed));

it('what is not predicted is shown, but not judged', () => {
  const compare = new Comparing(runs);
  const seen = (run: (typeof runs)[number]) => run.features.get('rim')!.values.spread();
  const open = compare.mean(null, seen);
  const right = compare.mean(10, seen);
  const wrong = compare.sd(0.2, seen);
  const never = compare.share(0.5, () => ({ hits: 0, of: 0 }));
  compare.judge.settle();
  expect(open).toMatchObject({ predicted: null, differs: null, simulated: { runs: 4 } });
  expect(right.differs).toBe(false);
  expect(wrong.differs).toBe(true);
  expect(never).toMatchObject({ simulated: null, differs: null });
  expect(compare.judge.comparisons).toBe(2);
  expect(compare.judge.differing).toBe(1);
});
