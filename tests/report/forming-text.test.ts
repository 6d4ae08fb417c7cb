import { describe, expect, it } from 'vitest';
import { idealLine } from '../../src/line/ideal.ts';
import { checkJson } from '../../src/report/check-json.ts';
import { formingTexts } from '../../src/report/forming-text.ts';
import { parseScenario } from '../../src/scenario/parse.ts';

const scenarioOf = (station = '') =>
  parseScenario(
    `mendline: 1
title: T
about: Invented.
run: { warm-up: 0 s, length: 1 h, seeds: 1 }
stock: { sheet: { unlimited: true, thickness: { nominal: 0.5 mm } } }
parts: { tray: { features: {} } }
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: 1
    cycle: 10 s
    to: good
${station}
policies: { carry on: [] }
`,
    'test.yaml',
  );

const told = (station?: string) => {
  const scenario = scenarioOf(station);
  return formingTexts(scenario.stations[0]!, scenario);
};

describe('the text of a forming station', () => {
  it('says nothing of plain settings', () => {
    expect(told('    settings: { heater: { target: 150 °C, cycle-sd: 1 °C } }')).toEqual([]);
  });

  it('says how each setting behaves', () => {
    expect(
      told(`    settings:
      heater: { target: 150 °C, wander: { sd: 0.8 °C, pull-back: 30 min }, drift: -0.5 °C/h }
      vacuum: { target: 80 kPa, sensor-bias: 1 kPa, when-cold: { after: 5 min, by: -8 kPa, fades: 3 min } }
      dwell: { target: 9 s, moves: { step: 0.5 s, from: 8 s, delay: 20 s } }`),
    ).toEqual([
      '"heater" wanders by a standard deviation of 0.8 °C, pulled back in 30 min, drifts by −0.5 °C an hour until fixed',
      '"vacuum" is off by −1 kPa unseen by its sensor, is off by −8 kPa after idling for more than 5 min, fading in 3 min',
      '"dwell" can be moved in steps of 0.5 s from 8 s after 20 s',
    ]);
  });

  it('says which parts are flawed', () => {
    expect(
      told(`    settings: { heater: { target: 150 °C } }
    window: { setting: heater, from: 138 °C, outside: pass }`),
    ).toEqual(['parts are incomplete below 138 °C of "heater", and then passed on unseen, never to fit']);
  });

  // T04: half a sphere has a draw ratio of 2; T03: the mean wall is the sheet over it.
  it('says the mean wall, and warns with the remedy where it lies below the least', () => {
    const wall = (least: string) => `    wall: { hemisphere: true, least: ${least} }`;
    expect(told(wall('0.25 mm'))).toEqual([
      'mean wall 0.25 mm at a draw ratio of 2; parts thinner than 0.25 mm are scrapped',
    ]);
    expect(told(wall('0.3 mm'))).toEqual([
      'warning: mean wall 0.25 mm at a draw ratio of 2 lies below the least, 0.3 mm: take sheet of 0.6 mm or more, ' +
        'or draw it less deep; parts thinner than 0.3 mm are scrapped',
    ]);
  });

  it('has its wall as data, too, where there is one', () => {
    const json = (station?: string) => {
      const scenario = scenarioOf(station);
      const made = checkJson({ scenario, ideal: idealLine(scenario), file: 'test.yaml', sha256: 'ab' });
      return JSON.parse(JSON.stringify(made)).stations[0];
    };
    expect(json('    wall: { hemisphere: true, least: 0.3 mm }')).toMatchObject({
      mean_wall_mm: 0.25, least_wall_mm: 0.3,
    }); // biome-ignore format: one line reads better
    expect(json()).not.toHaveProperty('mean_wall_mm');
  });
});
