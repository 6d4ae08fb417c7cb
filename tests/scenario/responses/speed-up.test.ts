import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { changed, refuses } from '../sample.ts';

const carryOn = '  carry on: []\n';
const hurry = (keys: string) =>
  `${carryOn}  hurry: [{ do: speed-up, ${keys}, when: { stock: sheet, below: 9 } }]\n`;

describe('speed-up', () => {
  it('is taken at a station that can go faster', () => {
    expect(() =>
      parseScenario(changed(carryOn, hurry('station: trimming, to: 120 %')), 'cell.yaml'),
    ).not.toThrow();
  });

  refuses([
    [carryOn, hurry('station: trimming, to: ¤100 %'), 'above 100 % and up to 1000 %'],
    [carryOn, hurry('station: trimming, to: ¤1001 %'), 'above 100 % and up to 1000 %'],
    [carryOn, hurry('station: ¤triming, to: 120 %'), 'did you mean "trimming"?'],
    [
      carryOn,
      hurry('station: ¤forming, to: 120 %'),
      '"forming" heats or cools the sheet for as long as it needs, which goes no faster; speed up a station behind it',
    ],
  ]);
});
