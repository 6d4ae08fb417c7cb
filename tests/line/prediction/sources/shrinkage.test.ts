import { it } from 'vitest';
import { expectPredicted } from '../by-simulation.ts';
import { cell } from '../cell.ts';

// One delivery lasts a whole run, so many short runs see many; the variation of the sheet's delivery itself leans on no other.
it('what deliveries shrink by, and share, is as the line has it', () =>
  expectPredicted(
    cell({
      run: 'run: { warm-up: 0 s, length: 1 min, seeds: 1 }',
      sheet: 'shrinkage: { lot-sd: 0.3 % }',
      rim: 'mould: 10 mm, own-sd: 0.01 mm, lot-sd: 0.03 mm',
      others: '      lip: { nominal: 5 mm, made-at: forming, own-sd: 0.01 mm, lot-sd: 0.02 mm }',
      correlations: '[{ of: [rim, lip], lot: -0.5 }]',
    }),
    ['rim', 'lip'],
    1500,
  ));
