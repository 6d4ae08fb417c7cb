import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { changed, expectRefused, refuses } from '../sample.ts';

const carryOn = '  carry on: []\n';
const bound = (responses: string, name = 'foresight') => `${carryOn}  ${name}: [${responses}]\n`;

describe('a bound', () => {
  it.each([
    '{ do: foresee }',
    '{ do: foresee }, { do: keep, stock: sheet, on-hand: 200 }',
    '{ do: keep, stock: sheet, on-hand: 200 }, { do: foresee }',
  ])('is taken as %s', (responses) => {
    expect(() => parseScenario(changed(carryOn, bound(responses)), 'cell.yaml')).not.toThrow();
  });

  refuses([
    [
      carryOn,
      '  carry on: [{ do: ¤foresee }]\n',
      'the first policy is what the others are compared with, and a bound is no policy; put another one first',
    ],
    [
      carryOn,
      `${bound('{ do: foresee }')}  again: [{ do: ¤foresee }]\n`,
      '"foresight" foresees already, and one bound is enough; take one of them out',
    ],
    [
      carryOn,
      bound('{ do: foresee }, { do: ¤inspect, at: gauging, every: 1 }'),
      'who foresees has nothing left to respond to; besides "foresee" a bound may only "keep" stocks',
    ],
    [carryOn, bound('{ do: foresee }, { do: ¤foresee }'), 'who foresees has nothing left to respond to'],
    [carryOn, bound('{ do: foresee, ¤when: { from: 1 h } }'), 'unknown key "when"'],
    [carryOn, bound('{ do: ¤forsee }'), 'did you mean "foresee"?'],
  ]);

  it('is not called the first where the policy before it has problems of its own', () => {
    const text = changed(carryOn, '  carry on: ¤5\n  foresight: [{ do: foresee }]\n');
    expectRefused(text, 'expected a list of responses');
  });
});
