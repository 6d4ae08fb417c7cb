import { describe, expect, it } from 'vitest';
import { explain } from '../../src/experiment/explanation.ts';
import type { Compared } from '../../src/experiment/judge.ts';
import { cell } from '../line/prediction/cell.ts';
import { blanks, small } from '../line/small-line.ts';

/** Everything varies and every link of the chain is used; features share the heater, the thickness and the cavity. */
const RICH = {
  run: 'run: { warm-up: 10 min, length: 12 h, seeds: 1 }',
  perSheet: 2,
  thickness: '{ nominal: 0.5 mm, own-sd: 0.02 mm }',
  settings: '{ heater: { target: 150 °C, cycle-sd: 1 °C } }',
  rim: 'tolerance: 0.25 mm, own-sd: 0.05 mm, sheet-sd: 0.04 mm, cavities: [0.06 mm, -0.06 mm], gains: { heater: 0.05 mm/°C, thickness: 2 mm/mm }',
  others: `      lip: { nominal: 5 mm, tolerance: 0.2 mm, made-at: forming, own-sd: 0.04 mm, cavities: [0.05 mm, -0.05 mm], gains: { heater: -0.06 mm/°C } }
      tab: { nominal: 4 mm, tolerance: 0.2 mm, made-at: trimming, own-sd: 0.08 mm, sheet-sd: 0.05 mm }`,
  frame:
    'groove: { nominal: 10.3 mm, own-sd: 0.05 mm }\n      slot: { nominal: 5.2 mm, own-sd: 0.03 mm }\n      notch: { nominal: 4.2 mm }',
  measures:
    'rim: { repeatability: 0.05 mm, bias: 0.02 mm }\n      lip: { repeatability: 0.04 mm }\n      tab: { repeatability: 0.03 mm }',
  fits: `- { hole: frame.groove, shaft: rim, least: 0.1 mm, most: 0.55 mm }
      - { hole: frame.slot, shaft: lip, least: 0.05 mm, most: 0.4 mm }
      - { hole: frame.notch, shaft: tab, least: 0.05 mm, most: 0.4 mm }`,
  takesHold: '95 %',
  mateTries: 2,
};

describe('predicted and simulated', { timeout: 60_000 }, () => {
  // Two ways to one answer: the closed forms, and the line itself. The runs decide at 99 % for all values together, with
  // intervals from their own standard error.
  it('agree for every link of the chain', () => {
    const { features, assemblies, gauges, readers, comparisons } = explain(cell(RICH), 12);
    const told: [string, Compared | null][] = [
      ...features.flatMap(({ spec, mean, sd, outside }): [string, Compared | null][] => [
        [`mean of ${spec.name}`, mean],
        [`sd of ${spec.name}`, sd],
        [`${spec.name} outside`, outside],
      ]),
      ...assemblies[0]!.pairs.flatMap(({ shaft, clearance, sd, fits, tight, loose }) =>
        Object.entries({ clearance, sd, fits, tight, loose }).map(([key, value]): [string, Compared] => [
          `${key} of ${shaft}`,
          value,
        ]),
      ),
      ['all fit', assemblies[0]!.all],
      ...gauges[0]!.features.flatMap(
        ({ name, off, badPassed, goodRejected }): [string, Compared | null][] => [
          [`${name} off`, off],
          [`${name} bad passed`, badPassed],
          [`${name} good rejected`, goodRejected],
        ],
      ),
      ['off', gauges[0]!.off],
      ['unread', readers[0]!.unread],
    ];
    expect(told).toHaveLength(3 * 3 + 3 * 5 + 1 + 3 * 3 + 1 + 1);
    expect(comparisons).toBe(told.length);
    const differing = told.filter(([, value]) => value?.differs !== false);
    expect(differing).toEqual([]);
    // The runs are sharp enough for that to mean something.
    const half = ({ simulated }: Compared) => (simulated!.upper! - simulated!.lower!) / 2;
    expect(half(features[0]!.sd) / features[0]!.sd.predicted!).toBeLessThan(0.02);
    expect(half(assemblies[0]!.all)).toBeLessThan(0.01);
    expect(half(gauges[0]!.off!)).toBeLessThan(0.01);
  });

  // D12 in the line's own words: what features share makes them fit together more often than by chance.
  it('agree where features follow one heater, far from what independent features would give', () => {
    const { assemblies } = explain(
      cell({
        run: 'run: { warm-up: 10 min, length: 12 h, seeds: 1 }',
        settings: '{ heater: { target: 150 °C, cycle-sd: 1 °C } }',
        rim: 'own-sd: 0.03 mm, gains: { heater: 0.1 mm/°C }',
        others:
          '      lip: { nominal: 5 mm, made-at: forming, own-sd: 0.03 mm, gains: { heater: 0.1 mm/°C } }',
        frame: 'groove: { nominal: 10.3 mm }\n      slot: { nominal: 5.3 mm }',
        fits: `- { hole: frame.groove, shaft: rim, least: 0.2 mm, most: 0.4 mm }
      - { hole: frame.slot, shaft: lip, least: 0.2 mm, most: 0.4 mm }`,
      }),
      10,
    );
    const { pairs, all } = assemblies[0]!;
    const independent = pairs.reduce((product, { fits }) => product * fits.predicted!, 1);
    expect(all.differs).toBe(false);
    expect(all.predicted! - independent).toBeGreaterThan(10 * (all.simulated!.upper! - all.simulated!.value));
  });

  it('differ where the gauge takes parts out, which no closed form here knows', () => {
    const { features, assemblies } = explain(cell({ ...RICH, offLimits: 'scrap' }), 6);
    expect(features[0]!.sd.differs).toBe(false);
    expect(assemblies[0]!.pairs[0]!.sd.differs).toBe(true);
  });
});

describe('an explanation', () => {
  it('leaves disturbances and policies out', () => {
    const disturbed = cell({
      settings: '{ heater: { target: 150 °C } }',
      rim: 'own-sd: 0.1 mm, gains: { heater: 1 mm/°C }',
      more: 'disturbances: { cold: { disturbs: setting, setting: heater, by: -6 °C, at: 0 s, for: 4 h } }',
    });
    const calm = { ...disturbed, disturbances: [] };
    expect(explain(disturbed, 2)).toEqual(explain(calm, 2));
  });

  it('gives no verdict on one run', () => {
    const { features } = explain(cell({ rim: 'own-sd: 0.1 mm' }), 1);
    expect(features[0]!.mean).toMatchObject({ simulated: { lower: null }, differs: null });
  });

  it('has no simulated value of what never came up', () => {
    const { gauges } = explain(cell({ rim: 'tolerance: 1 mm, own-sd: 0.1 mm', every: 100_000 }), 2);
    expect(gauges[0]!.features[0]!.off).toMatchObject({ simulated: null, differs: null });
  });

  it('of a line without dimensions and marks is empty, and runs nothing', () => {
    const plain = small('1 h', blanks('  press: { does: work, takes: blank, cycle: 9 s, to: good }'));
    expect(explain(plain, 3)).toMatchObject({
      seeds: 0,
      comparisons: 0,
      features: [],
      assemblies: [],
      gauges: [],
      readers: [],
    });
  });
});
