import { expect, it } from 'vitest';
import { theoryNamed } from '../../../src/exercise/theories/index.ts';
import { NotOfItsKind } from '../../../src/exercise/theories/theory.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { ScenarioError } from '../../../src/scenario/problem.ts';
import { SHIPPED } from '../shipped.ts';

type Data = Record<string, unknown>;

/** The data with a value at keys that stand as `a/b/0/c`; those that are not there are made. */
function withAt(data: unknown, place: string, value: unknown): unknown {
  const changed = structuredClone(data);
  const keys = place.split('/');
  let at = changed as Data;
  for (const key of keys.slice(0, -1)) {
    at[key] ??= {};
    at = at[key] as Data;
  }
  at[keys.at(-1)!] = value;
  return changed;
}

function lineOf(name: string): { readonly raw: unknown; readonly theory: string } {
  const { raw, theory } = SHIPPED.find(([file]) => file === `${name}.yaml`)![1];
  return { raw, theory: theory! };
}

function valuesOf(name: string, changes: Readonly<Record<string, unknown>>, policy: string) {
  const { raw, theory } = lineOf(name);
  const changed = Object.entries(changes).reduce((data, [place, value]) => withAt(data, place, value), raw);
  return theoryNamed(theory)!.values(parseScenario(JSON.stringify(changed), 'line'), policy);
}

/** The part of a line that something is done to, in each of the exercises. */
const LINES = [
  ['buffer', 'press', 'assembly'],
  ['stops', 'trays', 'press'],
  ['shortage', 'trays', 'counter'],
  ['drift', 'forming', 'assembly'],
] as const;

const JAM = {
  jam: {
    every: { distribution: 'exponential', mean: '1 h' },
    counted: 'clock',
    repair: '5 min',
    cycle: 'scraps',
  },
};

const STEP = { cycle: { distribution: 'exponential', mean: '60 s' }, to: 'good' };

/** What may be done to any line: where, what, and what is said of it; `$` is a station that works. */
const OF_ANY: readonly (readonly [string, unknown, string])[] = [
  ['disturbances', { halt: { disturbs: 'station', station: '$', at: '1 h', for: '1 h' } }, 'disturb'],
  ['policies/carry on', [{ do: 'slow', station: '$', to: '50 %', when: { from: '1 h' } }], 'not to "slow"'],
  ['demand', { every: '1 h', 'due-after': '1 h', 'finished-goods': { most: 9 } }, '"demand"'],
  ['run/warm-up', 'none', 'long run'],
  ['stations/$/machines', 2, '"machines" of "$"'],
  ['stations/$/speed', '90 %', '"speed" of "$"'],
  ['stations/$/calendar', 'day', '"calendar" of "$"'],
  ['stations/$/handling', { load: '1 s' }, '"handling" of "$"'],
  ['stations/$/set-ups/clean', { every: '1 h', counted: 'clock', takes: '5 min' }, '"$"|"clean"'],
  ['stations/$/maintenance', { oil: { cycles: 50, takes: '5 min' } }, '"maintenance" of "$"'],
  ['stations/$/warm-up', { after: '1 h', takes: '10 min' }, '"warm-up" of "$"'],
  ['stations/$/breakdowns', JAM, '"$"|"jam"'],
];

/** The same for one line. */
const OF_ONE: readonly (readonly [
  line: string,
  place: string,
  value: unknown,
  said: string,
  policy?: string,
])[] = [
  ['buffer', 'stock/tray blank', { 'on-hand': 5 }, 'unlimited'],
  ['buffer', 'stations/assembly', { ...STEP, does: 'work', buffer: 5, batch: 2 }, '"batch"'],
  ['buffer', 'stations/assembly/buffer', { places: 5, transit: '1 min' }, 'buffer'],
  [
    'buffer',
    'stations/press/to',
    { by: 'share', routes: { assembly: '50 %', good: '50 %' } },
    'nothing else',
  ],
  ['buffer', 'stations/press/calendar', 'day', '"calendar"'],
  ['stops', 'stations/trays/calendar', 'day', '"calendar" of "trays"'],
  ['stops', 'stations/trays/to', { by: 'share', routes: { press: '50 %', good: '50 %' } }, 'nothing else'],
  ['stops', 'stations/press/batch', 2, '"batch"'],
  ['stops', 'stations/press/breakdowns/jam/crew', 'fitter', '"crew" of "jam"'],
  ['stops', 'stations/press/breakdowns/jam/spare', 'fuse', '"spare" of "jam"'],
  ['stops', 'stations/press/breakdowns/jam/cycle', 'restarts', 'resume'],
  ['shortage', 'stations/counter/without-mates', 'scrap', '"without-mates"'],
  ['shortage', 'stations/trays/calendar', 'day', '"calendar" of "trays"'],
  ['shortage', 'stock/frame/shelf-life', '2 d', '"shelf-life"'],
  ['shortage', 'stock/frame/review', '8 h', '"review"'],
  ['shortage', 'stock/frame/incoming', { takes: '1 h' }, '"incoming"'],
  ['shortage', 'stock/frame/delivers', { sound: '90 %' }, '"delivers"'],
  ['shortage', 'stock/frame/outages', { every: '5 d', for: '1 d' }, '"outages"'],
  ['shortage', 'stock/frame/one-order-at-a-time', 'yes', '"one-order-at-a-time"'],
  ['drift', 'stations/gauging/measures/rim/bias', '0.05 mm', '"bias"'],
  ['drift', 'stations/gauging/measures/rim/repeatability', '0.05 mm', '"repeatability"'],
  ['drift', 'stations/gauging/measures/rim/resolution', '0.05 mm', '"resolution"'],
  ['drift', 'stations/gauging/measures/rim/guard', '0.05 mm', '"guard"'],
  ['drift', 'stations/gauging/measures/rim/takes', '5 s', '"takes"'],
  ['drift', 'stations/gauging/off-limits', 'pass', 'scrapped'],
  ['drift', 'stations/gauging/reader', { reads: '90 %', unread: 'pass' }, '"reader"'],
  ['drift', 'stations/gauging/buffer', 1, '2 places or more'],
  ['drift', 'stations/gauging/buffer', 'unlimited', 'so many places'],
  ['drift', 'stations/gauging/every', '10 min', 'one part in so many'],
  ['drift', 'stations/forming/settings/heater/cycle-sd', '1 °C', '"cycle-sd"'],
  ['drift', 'stations/forming/settings/heater/wander', { sd: '1 °C', 'pull-back': '1 h' }, '"wander"'],
  ['drift', 'stations/forming/settings/heater/sensor-bias', '1 °C', '"sensor-bias"'],
  [
    'drift',
    'stations/forming/settings/heater/when-cold',
    { after: '1 h', by: '2 °C', fades: '1 h' },
    '"when-cold"',
  ],
  ['drift', 'stations/forming/settings/heater/moves', { delay: '5 min' }, '"moves"'],
  ['drift', 'stations/forming/settings/vacuum', { target: '80 kPa' }, 'one setting'],
  ['drift', 'stations/forming/window', { setting: 'heater', from: '140 °C' }, '"window"'],
  ['drift', 'stock/sheet', { unlimited: true, thickness: { nominal: '1 mm' } }, '"thickness"'],
  ['drift', 'stations/forming/per-sheet', 2, '"per-sheet"'],
  ['drift', 'stations/forming/set-ups/unloading/cycles', 5, 'after every cycle'],
  ['drift', 'stations/forming/set-ups/unloading/crew', 'fitter', '"crew"'],
  ['drift', 'stations/gauging/breakdowns', JAM, '"breakdowns" of "gauging"'],
  ['drift', 'stations/assembly/cycle', '70 s', 'keep up'],
  ['drift', 'stations/assembly/forcing', { stiffness: '400 N/mm', limit: '50 N' }, '"forcing"'],
  ['drift', 'stations/assembly/mate-tries', 2, '"mate-tries"'],
  ['drift', 'stock/frame/features/groove/own-sd', '0.05 mm', '"own-sd"'],
  ['drift', 'stock/frame/features/groove/lot-sd', '0.05 mm', '"lot-sd"'],
  ['drift', 'stock/frame', { 'on-hand': 50, features: { groove: { nominal: '120.3 mm' } } }, 'unlimited'],
  ['drift', 'parts/tray/features/rim/sheet-sd', '0.05 mm', '"sheet-sd"'],
  ['drift', 'parts/tray/features/rim/cavities', ['0.1 mm'], '"cavities"'],
  ['drift', 'parts/tray/features/rim/curvatures', { heater: '0.01 mm/°C²' }, '"curvatures"'],
  ['drift', 'policies/retune/0/deadband', '0.1 mm', '"deadband"', 'retune'],
  ['drift', 'policies/retune/0/mean-of', 3, '"mean-of"', 'retune'],
  ['drift', 'policies/retune/0/gain', '0.05 mm/°C', '"gain"', 'retune'],
  ['drift', 'policies/retune/0/acts-after', '1 h', '"acts-after"', 'retune'],
  ['drift', 'policies/gauge every tray/0/every', 2, 'every part', 'gauge every tray'],
  ['drift', 'policies/gauge every tray/0/when', { from: '1 h' }, '"when"', 'gauge every tray'],
];

/** What a change refers to stands in the scenario with it. */
const WITH: Readonly<Record<string, readonly [place: string, value: unknown]>> = {
  fuse: ['stock/fuse', { unlimited: true }],
  fitter: ['crew', { fitter: { number: 1 } }],
  day: ['calendars', { day: { shifts: [{ days: ['mon'], begins: '6 h', lasts: '8 h' }] } }],
};

const filled = (text: string, station: string) => text.replaceAll('$', station);

type Change = (typeof OF_ONE)[number];

const ofAny = LINES.flatMap(([line, ...stations]) =>
  OF_ANY.flatMap(([place, value, said]) =>
    (place.includes('$') ? stations : stations.slice(-1))
      .filter((station) => station !== 'trays')
      .map(
        (station): Change => [
          ...([line, filled(place, station)] as const),
          JSON.parse(filled(JSON.stringify(value), station)),
          filled(said, station),
        ],
      ),
  ),
);
/** These the formula of the stops reads; what it does not read of them is listed by itself. */
const READ = (line: string, place: string) => line === 'stops' && place === 'stations/press/breakdowns';
const REFUSED = [...ofAny.filter(([line, place]) => !READ(line, place)), ...OF_ONE].map(
  ([line, place, value, said, policy = 'carry on']) => [line, place, value, said, policy] as const,
);

it.each(LINES)('%s: holds of the line as it ships', (line) => {
  expect(Object.values(valuesOf(line, {}, 'carry on')!).every(Number.isFinite)).toBe(true);
});

it.each(REFUSED)('%s: is not said to hold with %s of %j', (line, place, value, said, policy) => {
  let why: unknown;
  try {
    const further = typeof value === 'string' ? WITH[value] : undefined;
    valuesOf(line, { [place]: value, ...(further && { [further[0]]: further[1] }) }, policy);
  } catch (error) {
    why = error;
  }
  expect(why instanceof ScenarioError ? why.describe() : why).toBeInstanceOf(NotOfItsKind);
  expect(
    said.split('|').some((one) => (why as Error).message.includes(one)),
    String(why),
  ).toBe(true);
});
