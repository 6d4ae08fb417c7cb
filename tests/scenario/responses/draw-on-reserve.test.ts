import { describe } from 'vitest';
import { changed, refuses } from '../sample.ts';

const carryOn = '  carry on: []\n';
const draw = (keys: string) =>
  `${carryOn}  draw: [{ do: draw-on-reserve, ${keys}, when: { stock: sheet, below: 9 } }]\n`;

describe('draw-on-reserve', () => {
  refuses([
    [carryOn, draw('stock: ¤shet'), 'did you mean "sheet"?'],
    [carryOn, draw('stock: ¤frame'), '"frame" is unlimited, so it needs no reserve; name another stock'],
    [carryOn, draw('stock: ¤sheet'), '"sheet" has no reserve; give the stock one, such as "reserve: 200"'],
  ]);
  refuses(
    [[carryOn, draw('stock: sheet, pieces: ¤0'), 'expected a whole number from 1']],
    changed('    lead-time: 2 h\n', '    lead-time: 2 h\n    reserve: 9\n'),
  );
});

describe('a reserve', () => {
  refuses([
    [
      '  film: { unlimited: true }',
      '  film: ¤{ unlimited: true, reserve: 9 }',
      'an unlimited stock needs no reserve',
    ],
    ['    lead-time: 2 h\n', '    lead-time: 2 h\n    reserve: ¤0\n', 'expected a whole number from 1'],
    [
      '    lead-time: 2 h\n',
      '    lead-time: 2 h\n    shelf-life: 9 h\n    reserve: ¤9\n',
      'what has a shelf life does not keep in a reserve; take out "reserve" or "shelf-life"',
    ],
  ]);
});
