import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, expectRefused, refuses, SOUND } from './sample.ts';

/** SOUND with every key of forming. */
const FULL = changed(
  '    heating: 24 s/mm\n    settings:\n      heater: { target: 150 °C, cycle-sd: 0.6 °C }\n',
  `    heating: { sheet: 4 mm, takes: 90 s, grows: by-square }
    cooling: 8 s/mm
    settings:
      heater:
        target: 150 °C
        cycle-sd: 0.6 °C
        wander: { sd: 0.8 °C, pull-back: 30 min }
        drift: 0.5 °C/h
        sensor-bias: 1 °C
        when-cold: { after: 5 min, by: -8 °C, fades: 3 min }
        moves: { step: 0.5 °C, from: 140 °C, to: 160 °C, delay: 20 s }
      vacuum: { target: 80 kPa }
    window: { setting: heater, from: 138 °C, to: 162 °C, outside: pass }
    wall: { draw-ratio: 1.8, least: 0.22 mm, thinning: 0.5 %/°C }
`,
)
  .replace(
    '        cavities: [0.02 mm',
    `        curvatures: { heater: 0.002 mm/°C² }
        interactions: [{ of: [heater, vacuum], gain: 0.001 mm/°C/kPa }]
        cavities: [0.02 mm`,
  )
  .replace(
    'thickness: { nominal: 0.5 mm }\n',
    'thickness: { nominal: 0.5 mm }\n    shrinkage: { lot-sd: 0.02 % }\n',
  );

const forming = () => {
  const station = parseScenario(FULL, 'cell.yaml').stations[0]!;
  if (station.does !== 'form') throw new Error('the first station forms');
  return station;
};

describe('what a setting is called and where it stands', () => {
  it('stands at a temperature in °C, and is off it by K or °C', () => {
    expect(forming().settings).toHaveLength(2);
    const inKelvins = FULL.replace('cycle-sd: 0.6 °C', 'cycle-sd: 0.6 K').replace('by: -8 °C', 'by: -8 K');
    expect(parseScenario(inKelvins, 'cell.yaml')).toMatchObject({
      stations: [{ settings: forming().settings }, {}, {}, {}, {}, {}, {}],
    });
  });

  refuses(
    [
      [
        'target: 150 °C',
        'target: ¤423.15 K',
        '"423.15 K": K is for differences; a temperature is given in °C, as 150 °C',
      ],
      ['to: 160 °C', 'to: ¤433 K', 'as 159.85 °C'],
      ['from: 138 °C', 'from: ¤411 K', 'as 137.85 °C'],
    ],
    FULL,
  );

  it('is not called after the thickness of the sheet, which features follow by that name', () => {
    expectRefused(
      changed(
        'heater: { target: 150 °C, cycle-sd: 0.6 °C }',
        'heater: { target: 150 °C, cycle-sd: 0.6 °C }\n      ¤thickness: { target: 1 mm }',
      ),
      '"thickness" is that of the sheet wherever a feature follows it; give the setting another name',
    );
  });
});

describe('a forming station', () => {
  it('is read with every key, in base units', () => {
    const { heating, cooling, settings, window, wall } = forming();
    // 90 s at 4 mm, by the square.
    expect(heating).toEqual({ factor: 90 / 16, power: 2 });
    expect(cooling).toEqual({ factor: 8, power: 1 });
    expect(settings![0]).toMatchObject({
      wander: { sd: { value: 0.8 }, pullBack: 1800 },
      sensorBias: { value: 1 },
      whenCold: { after: 300, by: { value: -8 }, fades: 180 },
      moves: { step: { value: 0.5 }, from: { value: 140 }, to: { value: 160 }, delay: 20 },
    });
    expect(settings![0]!.drift!.value * 3600).toBeCloseTo(0.5, 12);
    expect(window).toMatchObject({ setting: 'heater', outside: 'pass' });
    expect(wall).toMatchObject({ drawRatio: 1.8, least: 0.22, outside: 'scrap' });
    expect(wall!.thinning!.value).toBeCloseTo(0.005, 12);
  });

  // T01 and T04 of draw-ratio.test.ts, by way of the format.
  it.each([
    ['box: { length: 12 in, width: 10 in, depth: 2 in }', 1.73333],
    ['cup: { diameter: 80 mm, height: 40 mm }', 3],
    ['hemisphere: true', 2],
  ])('takes the draw ratio from %s', (shape, ratio) => {
    const [station] = parseScenario(changed('draw-ratio: 1.8', shape, FULL), 'cell.yaml').stations;
    expect(station!.does === 'form' && station.wall!.drawRatio).toBeCloseTo(ratio, 5);
  });

  refuses(
    [
      ['sheet: 4 mm', 'sheet: ¤0 mm', '0 mm is not allowed: a length here is above zero'],
      ['takes: 90 s', 'takes: ¤-90 s', 'not negative'],
      ['grows: by-square', 'grows: ¤by-squares', 'did you mean "by-square"?'],
      ['cooling: 8 s/mm', 'cooling: ¤8 s/°C', 'expected a time per length, such as 16 s/mm'],
      ['cooling: 8 s/mm', 'cooling: ¤-8 s/mm', 'cooling time cannot be negative'],
      ['cycle-sd: 0.6 °C', 'cycle-sd: ¤-0.6 °C', 'a standard deviation is not negative'],
      ['cycle-sd: 0.6 °C', 'cycle-sd: ¤0.6 kPa', '"cycle-sd" and "target" have units of different kinds'],
      ['{ sd: 0.8 °C', '{ sd: ¤-0.8 °C', 'a standard deviation is not negative'],
      ['{ sd: 0.8 °C', '{ sd: ¤0.8 mm', '"sd" and "target" have units of different kinds'],
      ['pull-back: 30 min', 'pull-back: ¤11 s', 'shorter than a cycle (12 s)'],
      ['drift: 0.5 °C/h', 'drift: ¤0.5 °C', 'expected a change per time, such as 0.5 °C/h'],
      ['drift: 0.5 °C/h', 'drift: ¤0.5 kPa/h', '"drift" and "target" have units of different kinds'],
      ['sensor-bias: 1 °C', 'sensor-bias: ¤1 s', '"sensor-bias" and "target" have units of different kinds'],
      ['by: -8 °C', 'by: ¤-8 kPa', '"by" and "target" have units of different kinds'],
      ['fades: 3 min', 'fades: ¤0 s', 'above zero'],
      ['step: 0.5 °C', 'step: ¤0 °C', 'a step is above zero'],
      ['step: 0.5 °C', 'step: ¤0.5 kPa', '"step" and "target" have units of different kinds'],
      ['from: 140 °C', 'from: ¤151 °C', '"from" lies above the target'],
      ['to: 160 °C', 'to: ¤149 °C', '"to" lies below the target'],
      ['delay: 20 s', 'delay: ¤-20 s', 'not negative'],
      ['window: { setting: heater', 'window: { setting: ¤heatr', 'did you mean "heater"?'],
      ['from: 138 °C', 'from: ¤138 kPa', '"heater" is a temperature, so expected one'],
      ['from: 138 °C', 'from: ¤163 °C', '"from" must lie below "to"'],
      ['from: 138 °C', 'from: ¤151 °C', 'the target of "heater" lies below it, outside the window'],
      ['to: 162 °C', 'to: ¤149 °C', 'the target of "heater" lies above it, outside the window'],
      ['outside: pass', 'outside: ¤past', 'did you mean "pass"?'],
      ['draw-ratio: 1.8', 'draw-ratio: ¤0.8', 'expected a number, 1 or more'],
      ['least: 0.22 mm', 'least: ¤0.22', '0.22 has no unit'],
      ['thinning: 0.5 %/°C', 'thinning: ¤-0.5 %/°C', 'thinning cannot be negative'],
      ['thinning: 0.5 %/°C', 'thinning: ¤0.5 %/kPa', 'so expected a share per temperature'],
      ['thinning: 0.5 %/°C', 'thinning: ¤0.5 mm/°C', 'expected a share per something'],
      ['lot-sd: 0.02 %', 'lot-sd: ¤0.02', 'has no unit'],
      ['lot-sd: 0.02 %', 'lot-sd: ¤-0.02 %', 'not negative'],
    ],
    FULL,
  );

  it('has a window with one end at least', () => {
    expectRefused(
      changed('window: { setting: heater, from: 138 °C, to: 162 °C, ', 'window: ¤{ setting: heater, ', FULL),
      'expected "from", "to" or both',
    );
  });

  it.each(['least: 0.22 mm', 'draw-ratio: 1.8, hemisphere: true, least: 0.22 mm'])(
    'draws its wall by one shape: not %s',
    (wall) => {
      expectRefused(
        changed('wall: { draw-ratio: 1.8, least: 0.22 mm', `wall: ¤{ ${wall}`, FULL),
        'expected exactly one of draw-ratio, box, cup, hemisphere',
      );
    },
  );

  it('thins by the setting of a window', () => {
    expectRefused(
      changed('    window: { setting: heater, from: 138 °C, to: 162 °C, outside: pass }\n', '', FULL).replace(
        'thinning: ',
        'thinning: ¤',
      ),
      'thinning goes by the setting of the "window", which is missing',
    );
  });

  it('heats, cools and draws a sheet whose thickness is known', () => {
    expectRefused(
      changed('    thickness: { nominal: 0.5 mm }\n', '', FULL)
        .replace('thickness: 1.5', 'thickness: ¤1.5')
        .replace('heating: {', 'heating: ¤{')
        .replace('cooling: 8', 'cooling: ¤8')
        .replace('wall: {', 'wall: ¤{'),
      'the stock "sheet" has no thickness',
      'heating goes by thickness',
      'cooling goes by thickness',
      'the wall is drawn from the thickness of the sheet, but the stock "sheet" has none',
    );
  });

  it('shrinks what has a mould', () => {
    expectRefused(
      changed('        mould: 120.5 mm\n        shrinkage: 0.4 %\n', '', FULL).replace(
        'shrinkage: { lot-sd',
        'shrinkage: ¤{ lot-sd',
      ),
      'no feature of "tray" has a "mould" that it shrinks from',
    );
  });
});

describe('a formed feature', () => {
  refuses(
    [
      ['curvatures: { heater: 0', 'curvatures: { ¤heatr: 0', 'did you mean "heater"?'],
      ['0.002 mm/°C²', '¤0.002 mm/°C', 'expected a length per two things, such as 0.002 mm/°C²'],
      ['0.002 mm/°C²', '¤0.002 s/°C²', 'expected a length per two things'],
      ['0.002 mm/°C²', '¤0.002 mm/kPa²', 'so its curvature is a length per temperature squared'],
      ['of: [heater, vacuum]', 'of: [heater, ¤vacum]', 'did you mean "vacuum"?'],
      ['of: [heater, vacuum]', 'of: ¤[heater]', 'expected two settings, such as [heater, vacuum]'],
      ['of: [heater, vacuum]', 'of: ¤[heater, heater]', 'for the square of "heater" give a curvature'],
      ['0.001 mm/°C/kPa', '¤0.001 mm/°C/°C', 'so expected a length per both'],
    ],
    FULL,
  );

  it.each(['0.001 mm/kPa/°C', '1 um/K/kPa'])('takes an interaction written %s', (gain) => {
    const scenario = parseScenario(changed('0.001 mm/°C/kPa', gain, FULL), 'cell.yaml');
    expect(scenario.parts[0]!.features[0]!.interactions![0]!.gain.value).toBeCloseTo(0.001, 12);
  });

  it('says the mould that the nominal asks for', () => {
    // 120 / (1 - 0.004), as in T09 of shrinkage.test.ts.
    expectRefused(
      changed('        mould: 120.5 mm\n', '').replace(
        '      rim:\n        nominal',
        '      ¤rim:\n        nominal',
      ),
      'shrinkage needs "mould", the size it shrinks from, such as 120.482 mm',
    );
  });

  it.each([
    'curvatures: ¤{ heater: 1 mm/K² }',
    'interactions: ¤[{ of: [heater, thickness], gain: 1 mm/K/mm }]',
  ])('follows settings where it is formed alone: %s', (key) => {
    expectRefused(
      changed('made-at: trimming', `made-at: trimming\n        ${key}`, SOUND),
      'only a formed feature follows forming settings; "trimming" does trim',
    );
  });
});
