import { describe } from 'vitest';
import { refuses } from '../sample.ts';

const carryOn = '  carry on: []\n';
const sort = (keys: string) =>
  `${carryOn}  sort: [{ do: reject, ${keys}, when: { stock: sheet, below: 9 } }]\n`;

describe('reject', () => {
  refuses([
    [
      carryOn,
      sort('at: ¤marking, to: scrap'),
      '"marking" is a station that does mark; expected one that does gauge or assemble',
    ],
    [carryOn, sort('at: gauging, to: ¤benc'), 'did you mean "bench"?'],
    [
      carryOn,
      sort('at: gauging, to: ¤trimming'),
      '"trimming" is a station that does trim; expected one that does rework',
    ],
    [
      carryOn,
      sort('at: assembly, to: ¤pass'),
      'what does not fit at "assembly" cannot pass on; send it to scrap or to a rework station',
    ],
  ]);
});
