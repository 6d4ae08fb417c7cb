import { expect, it } from 'vitest';
import { reasonsToDiffer } from '../../../src/report/explained/reasons.ts';
import { cell } from '../../line/prediction/cell.ts';

it('tells what takes parts out or alters them, and nothing where nothing does', () => {
  expect(reasonsToDiffer(cell())).toEqual([]);
  const bench =
    '  bench: { does: rework, buffer: unlimited, cycle: 9 s, limit: 1, corrects: {}, to: gauging }';
  expect(reasonsToDiffer(cell({ offLimits: 'scrap' }))).toEqual([expect.stringContaining('"gauging"')]);
  expect(reasonsToDiffer(cell({ misfit: 'bench', more: bench }))).toEqual([
    expect.stringContaining('"bench" alters parts'),
  ]);
});
