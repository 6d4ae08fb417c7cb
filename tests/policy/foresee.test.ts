import { describe, expect, it } from 'vitest';
import { undisturbed } from '../../src/disturbance/undisturbed.ts';
import { compare } from '../../src/experiment/comparison.ts';
import { recoveredOf } from '../../src/experiment/recovered.ts';
import { simulate } from '../../src/experiment/simulate.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { blanks, ran, small } from '../line/small-line.ts';

const POLICIES = `
policies:
  carry on: []
  foresight: [{ do: foresee }]
`;

/** A tray every 10 s, assembled within 5 s: it fits while the heater is off by no more than 3 °C either way. */
const cell = ({ setting = '', rim = '', perSheet = 1, cycle = '5 s', misfit = 'scrap', more = '' } = {}) => `
stock:
  sheet: { unlimited: true }
  frame: { unlimited: true, features: { groove: { nominal: 100.5 mm } } }
parts:
  tray: { features: { rim: { nominal: 100 mm, made-at: forming, gains: { heater: 0.1 mm/°C }${rim} } } }
stations:
  forming:
    does: form
    takes: sheet
    makes: tray
    per-sheet: ${perSheet}
    cycle: 10 s
    settings: { heater: { target: 150 °C${setting} } }
    to: assembly
  assembly:
    does: assemble
    buffer: unlimited
    takes: [frame]
    cycle: ${cycle}
    fits: [{ hole: frame.groove, shaft: rim, least: 0.2 mm, most: 0.8 mm }]
    misfit: ${misfit}
    to: good
${more}`;

const HOT = 'disturbances:\n  hot: { disturbs: setting, setting: heater, by: 10 °C, at: 3605 s, for: 1 h }\n';

const good = (scenario: Scenario) => scenario.policies.map(({ name }) => ran(scenario, name).counts.good);

describe('foresight by hand', () => {
  // In 3 h 1079 trays are assembled, the last 5 s before the end. For an hour, 360 of them do not fit.
  it('ends as it begins what a fix could end', () => {
    expect(good(small('3 h', cell() + HOT + POLICIES))).toEqual([1079 - 360, 1079]);
  });

  it('is told by a policy that recovers half as a share of a half', () => {
    const half = `  half: [{ do: retarget, setting: heater, by: -10 °C, when: { from: 5405 s, to: 7205 s } }]\n`;
    const scenario = small('3 h', cell() + HOT + POLICIES + half);
    expect(good(scenario)).toEqual([719, 1079, 719 + 180]);
    const names = ['carry on', 'half', 'foresight'];
    const outcomes = [1, 2, 3].flatMap((seed) => names.map((name) => simulate(scenario, name, seed)));
    const { recoverable, shares } = recoveredOf(names, outcomes, 'foresight');
    expect(recoverable.value).toBeCloseTo(120, 9);
    expect(shares!.map(({ policy }) => policy)).toEqual(['half']);
    const { value, lower, upper } = shares![0]!.share;
    for (const it of [value, lower, upper]) expect(it).toBeCloseTo(0.5, 9);
    expect(compare(names, outcomes, 'foresight').bound).toBe('foresight');
  });

  // It is 3 °C off after 1079 s: the trays loaded up to 1070 s fit.
  it('keeps settings from drifting', () => {
    expect(good(small('1 h', cell({ setting: ', drift: 10.01 °C/h' }) + POLICIES))).toEqual([108, 359]);
  });

  // One piece every 10 s, and ten of them every 100 s: an order placed at 1040 s, or 1050 s, is due within the outage, what
  // is on hand is taken at 1090 s, and the next piece at 1500 s: 40 are not made.
  const supplied = (outages: string) =>
    `${blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }\n').replace(
      '{ unlimited: true }',
      `{ on-hand: 10, reorder-at: 5, order: 10, lead-time: 30 s${outages} }`,
    )}`;
  it('has ordered ahead of an outage that is a disturbance', () => {
    const late = 'disturbances:\n  late: { disturbs: supplier, stock: blank, at: 1000 s, for: 500 s }\n';
    expect(good(small('2000 s', supplied('') + late + POLICIES))).toEqual([160, 200]);
  });

  it('has ordered ahead of an outage that comes at random', () => {
    const outages = ', outages: { every: 1000 s, for: 500 s }';
    expect(good(small('2000 s', supplied(outages) + POLICIES))).toEqual([160, 200]);
    const two = `, suppliers: { near: { rank: 1${outages} }, far: { rank: 2${outages} } }`;
    expect(good(small('2000 s', supplied(two) + POLICIES))).toEqual([160, 200]);
  });

  it('ends no stop of a station', () => {
    const halt = 'disturbances:\n  halt: { disturbs: station, station: only, at: 1000 s, for: 500 s }\n';
    const made = good(small('2000 s', supplied('') + halt + POLICIES));
    expect(made[0]).toBeLessThan(160);
    expect(made[1]).toBe(made[0]);
  });

  it('lets be what can only help', () => {
    const fast =
      'disturbances:\n  fast: { disturbs: speed, station: only, to: 200 %, at: 1005 s, for: 500 s }\n';
    const line = blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }\n');
    const made = good(small('2000 s', line + fast + POLICIES));
    expect(made[0]).toBeGreaterThan(200);
    expect(made[1]).toBe(made[0]);
  });

  // Each sheet gives a tray that fits and one that never does. The assembly tries one every 10 s, 99 in all: half of them
  // fit, or nearly, where an attempt in vain takes time, and all but one a sheet where it takes none.
  it('wastes no time on what its true dimensions would send to scrap', () => {
    const body = cell({ perSheet: 2, rim: ', cavities: [0 mm, 1 mm]', cycle: '10 s' });
    expect(good(small('1000 s', body + POLICIES))).toEqual([50, 99]);
  });

  it('takes its time for what a bench may mend, or a press may close', () => {
    const bench =
      '  bench: { does: rework, buffer: unlimited, cycle: 40 s, limit: 1, corrects: { rim: { removes: 50 %, own-sd: 0 mm } }, to: assembly }\n';
    const mended = cell({ perSheet: 2, rim: ', cavities: [0 mm, 1 mm]', misfit: 'bench', more: bench });
    const pressed = cell({
      ...{ perSheet: 2, rim: ', cavities: [0 mm, 1 mm]' },
      misfit: 'scrap\n    forcing: { stiffness: 400 N/mm, limit: 1 kN, damages: 5 %, takes: 3 s }',
    });
    for (const body of [mended, pressed]) {
      const scenario = small('1000 s', body + POLICIES);
      expect({ ...ran(scenario, 'foresight'), policy: '' }).toEqual({ ...ran(scenario), policy: '' });
    }
  });

  it('has a twin like any policy, which is itself where all that comes is averted', () => {
    const scenario = small('3 h', cell() + HOT + POLICIES);
    expect(ran(undisturbed(scenario), 'foresight')).toEqual(ran(scenario, 'foresight'));
  });

  it('may keep stocks besides, of which there are ten pieces otherwise', () => {
    const line = blanks('  only: { does: work, takes: blank, cycle: 10 s, to: good }\n').replace(
      'unlimited: true',
      'on-hand: 10',
    );
    const kept = POLICIES.replace('foresee }', 'foresee }, { do: keep, stock: blank, on-hand: 15 }');
    expect(good(small('2000 s', line + kept))).toEqual([10, 15]);
  });
});
