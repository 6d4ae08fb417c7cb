import { describe } from 'vitest';
import { FLOW } from '../flow-sample.ts';
import { refuses } from '../sample.ts';

const carryOn = 'policies:\n  carry on: []\n';
const holds = (keys: string) => `${carryOn}  p: [{ ${keys} }]\n`;

describe('a hold', () => {
  refuses(
    [
      [
        carryOn,
        holds('do: hold, station: ¤incoming, when: { from: 1 h }'),
        'parts come to "incoming" by themselves, whatever a policy does; hold a station behind it',
      ],
      [
        carryOn,
        holds(
          'do: stop-and-fix, station: ¤incoming, watch: { at: ¤milling, sees: off-limits, count: 1, of-last: 2 }, takes: 1 s',
        ),
        'hold a station behind it',
        '"milling" is a station that does work',
      ],
      [carryOn, holds('do: hold, station: ¤miling, when: { from: 1 h }'), 'did you mean "milling"?'],
    ],
    FLOW,
  );
});
