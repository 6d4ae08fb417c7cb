import { describe, expect, it } from 'vitest';
import { curvedGroups, responsesOf, shiftsAt } from '../../../src/line/prediction/response.ts';
import { cell } from './cell.ts';

const of = (rim: string) =>
  responsesOf(
    cell({
      thickness: '{ nominal: 0.5 mm }',
      settings: '{ heater: { target: 150 °C }, press: { target: 80 kPa }, cooler: { target: 20 °C } }',
      rim,
    }),
  )[0]!;

describe('the response of features', () => {
  // 0.1 x 2 + 0.01 x 4 - 0.02 x 2 x 3 = 0.12.
  it('is linear, with squares and products', () => {
    const response = of(
      'gains: { heater: 0.1 mm/°C }, curvatures: { heater: 0.01 mm/°C² }, interactions: [{ of: [heater, press], gain: -0.02 mm/°C/kPa }]',
    );
    const values = new Map([
      ['heater', 2],
      ['press', 3],
    ]);
    expect(shiftsAt(values, response).get('rim')).toBeCloseTo(0.12, 12);
    expect(shiftsAt(new Map(), response).get('rim') ?? 0).toBe(0);
  });

  it('groups what must be looked at together', () => {
    const names = (rim: string) =>
      curvedGroups(of(rim))
        .map((group) => group.map(({ name }) => name).sort())
        .sort();
    expect(names('gains: { heater: 0.1 mm/°C }')).toEqual([]);
    expect(names('curvatures: { heater: 0.1 mm/°C², cooler: 0.1 mm/°C² }')).toEqual([['cooler'], ['heater']]);
    const pairs = (...of: string[]) => `interactions: [${of.map((pair) => `{ of: ${pair} }`).join(', ')}]`;
    expect(
      names(pairs('[heater, press], gain: 1 mm/°C/kPa', '[thickness, cooler], gain: 1 mm/mm/°C')),
    ).toEqual([
      ['cooler', 'thickness'],
      ['heater', 'press'],
    ]);
    expect(names(pairs('[heater, press], gain: 1 mm/°C/kPa', '[cooler, press], gain: 1 mm/°C/kPa'))).toEqual([
      ['cooler', 'heater', 'press'],
    ]);
  });
});
