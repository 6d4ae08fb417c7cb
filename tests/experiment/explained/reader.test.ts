import { expect, it } from 'vitest';
import { explain } from '../../../src/experiment/explanation.ts';
import { cell } from '../../line/prediction/cell.ts';

// 95 % take; read at the first or second try: 1 - 0.1^2 of grade A, 1 - 0.5^2 of C; 0.95 (0.6 x 0.99 + 0.4 x 0.75).
it('marks are read by their grades within the tries', () => {
  const { marks, readers } = explain(
    cell({
      takesHold: '95 %',
      marking: 'grades: { A: 60 %, C: 40 % }',
      reader: '{ reads: { A: 90 %, B: 70 %, C: 50 %, D: 10 % }, tries: 2, unread: pass }',
    }),
    10,
  );
  expect(marks).toEqual([
    { station: 'marking', takesHold: expect.closeTo(0.95, 12), grades: [0.6, 0, 0.4, 0, 0] },
  ]);
  expect(readers[0]!.unread.predicted).toBeCloseTo(1 - 0.95 * (0.6 * 0.99 + 0.4 * 0.75), 12);
  expect(readers[0]!.unread.differs).toBe(false);
});

it('marks that are all alike need no word', () => expect(explain(cell(), 1).marks).toEqual([]));
