import { expect, it } from 'vitest';
import { explain } from '../../../src/experiment/explanation.ts';
import { cell } from '../../line/prediction/cell.ts';

it('forming is explained where it has a window or a wall, and agrees with the line', () => {
  expect(explain(cell(), 1).forming).toEqual([]);
  const { incomplete, webbed, thin, wall } = explain(
    cell({
      run: 'run: { warm-up: 10 min, length: 6 h, seeds: 1 }',
      thickness: '{ nominal: 1 mm, own-sd: 0.04 mm }',
      settings: '{ heater: { target: 150 °C, cycle-sd: 4 °C } }',
      forming:
        'window: { setting: heater, from: 145 °C, to: 158 °C, outside: pass }\n    wall: { draw-ratio: 2, least: 0.47 mm, thinning: 0.5 %/°C, outside: pass }',
    }),
    10,
  ).forming[0]!;
  for (const it of [incomplete!, webbed!, thin!, wall!.mean, wall!.sd]) {
    expect(it.predicted).toBeGreaterThan(0);
    expect(it.differs).toBe(false);
  }
});
