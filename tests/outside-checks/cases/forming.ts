import { prepare } from '../../../src/experiment/simulate.ts';
import type { Outcome } from '../../../src/line/outcome.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { type Case, caseOf } from './case.ts';
import { type Keys, s, scenarioText } from './scenario-text.ts';
import { outcome } from './see.ts';

const mm = (number: number) => `${number} mm`;
const pairsOf = (names: readonly string[]) =>
  names.flatMap((a, i) => names.slice(i + 1).map((b) => [a, b] as const));

/** What is in common among the clearances of the pegs of one tray, each of sd `sig`, the common offset of sd `tau`. */
type Common = 'own' | 'sheet' | 'mate' | 'mate lot';

/** A tray of n holes on n pegs, all of which must clear by a mean of `m`, mm. */
function pegs(n: number, m: number, sig: number, tau: number, common: Common): (length: number) => string {
  const all = Math.hypot(sig, tau);
  const rho = tau ** 2 / all ** 2;
  const holes = Array.from({ length: n }, (_, i) => `h${i}`);
  const plain = Array.from({ length: n }, (_, i) => `p${i}`);
  // Either each has the whole spread and leans on the others by rho, or the offset varies by itself, all of it together.
  const [features, correlations]: [Keys, Keys] = {
    own: [{ 'own-sd': mm(all) }, { own: rho }] as [Keys, Keys],
    sheet: [{ 'own-sd': mm(sig), 'sheet-sd': mm(tau) }, { sheet: 1 }] as [Keys, Keys],
    mate: [{ 'own-sd': mm(all) }, { own: rho }] as [Keys, Keys],
    'mate lot': [{ 'own-sd': mm(sig), 'lot-sd': mm(tau) }, { lot: 1 }] as [Keys, Keys],
  }[common];
  const ofMate = common.startsWith('mate');
  const section = (names: readonly string[], nominal: number, own: Keys, varies: boolean) => ({
    features: Object.fromEntries(
      names.map((name) => [name, { nominal: mm(nominal), ...own, ...(varies && features) }]),
    ),
    ...(varies && { correlations: pairsOf(names).map((of) => ({ of, ...correlations })) }),
  });
  return scenarioText(60, {
    stock: {
      sheet: { unlimited: true },
      plate: {
        // Each delivery of one piece is a lot.
        ...(common === 'mate lot'
          ? { 'on-hand': 1, 'reorder-at': 9, order: 1, 'lead-time': s(1) }
          : { unlimited: true }),
        ...section(plain, 5, {}, ofMate),
      },
    },
    parts: { tray: section(holes, 5 + m, { 'made-at': 'forming' }, !ofMate) },
    stations: {
      forming: { does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 1, cycle: s(1), to: 'joining' },
      joining: {
        ...{ does: 'assemble', buffer: 4, takes: ['plate'], cycle: s(1) },
        fits: holes.map((hole, i) => ({ hole, shaft: `plate.p${i}`, least: mm(0), most: mm(100) })),
        ...{ misfit: 'scrap', to: 'good' },
      },
    },
  });
}

interface Clearing {
  readonly id: string;
  readonly n: number;
  readonly m: number;
  readonly sig: number;
  readonly expected: number;
  readonly sharp: number;
  readonly common: Common;
}

const IN_COMMON: Readonly<Record<Common, string>> = {
  own: 'features of a part lean on each other by 0.5',
  sheet: 'features of a sheet share their offset whole',
  mate: 'features of a mate lean on each other by 0.5',
  'mate lot': 'features of a delivery of mates share their offset whole',
};

function clearing({ id, n, m, sig, expected, sharp, common }: Clearing): Case {
  return caseOf<Outcome>({
    id,
    what: `${n} pegs all clear: ${IN_COMMON[common]}`,
    source: 'one-factor normal model; orthant of equicorrelated normals (Y. L. Tong 1990)',
    length: 40_000,
    scenario: pegs(n, m, sig, sig, common),
    see: outcome,
    values: [{ quantity: 'share that fits', expected, sharp, of: ({ measures }) => measures.fit_rate! }],
  });
}

/** Standard deviation of the wandering setting, °C. */
const SD = 0.8;
/** Seconds from sheet to sheet. */
const CYCLE = 10;
/** Sheets over which means are taken. */
const BATCH = 100;

/** The rim of each part in turn as the difference from nominal; a degree is a millimetre. */
function deviations(scenario: Scenario, seed: number): number[] {
  const line = prepare(scenario, 'carry on', seed);
  const { truth } = line.features.get('rim')!;
  const seen: number[] = [];
  line.good.leaving.push((row) => seen.push(line.parts.get(row, truth) - 100));
  line.calendar.run(scenario.run.warmUp + scenario.run.length);
  return seen;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The mean square of the means of batches: their variance, the mean being known to be zero. */
function varianceOfMeans(values: readonly number[]): number {
  const squares: number[] = [];
  for (let i = 0; i + BATCH <= values.length; i += BATCH) squares.push(mean(values.slice(i, i + BATCH)) ** 2);
  return mean(squares);
}

/** O16: a setting that wanders so that its correlation from sheet to sheet is `phi`. */
function wandering(phi: number): Case {
  const inflation = (1 + phi) / (1 - phi) - (2 * phi * (1 - phi ** BATCH)) / (BATCH * (1 - phi) ** 2);
  return caseOf<number[]>({
    id: `O16 phi=${phi}`,
    what: `a wandering setting seen from sheet to sheet: AR(1) with phi = ${phi}`,
    source: 'G. E. P. Box and G. M. Jenkins, Time Series Analysis; finite batches by the exact sum',
    length: 500_000,
    scenario: scenarioText(0, {
      stock: { sheet: { unlimited: true } },
      parts: {
        tray: {
          features: { rim: { nominal: '100 mm', 'made-at': 'forming', gains: { heater: '1 mm/°C' } } },
        },
      },
      stations: {
        forming: {
          ...{ does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 1, cycle: s(CYCLE) },
          settings: {
            heater: {
              target: '150 °C',
              wander: { sd: `${SD} °C`, 'pull-back': s(-CYCLE / Math.log(phi)) },
            },
          },
          to: 'good',
        },
      },
    }),
    see: deviations,
    values: [
      {
        ...{ quantity: 'variance', unit: '°C²', expected: SD ** 2, sharp: 0.02 },
        of: (seen) => mean(seen.map((value) => value ** 2)),
      },
      {
        ...{ quantity: 'correlation from sheet to sheet', expected: phi, sharp: 0.02 },
        of: (seen) => mean(seen.slice(1).map((value, i) => value * seen[i]!)) / SD ** 2,
      },
      {
        quantity: `variance of means of ${BATCH} over that of independent ones`,
        ...{ expected: inflation, sharp: 0.05 },
        of: (seen) => (varianceOfMeans(seen) * BATCH) / SD ** 2,
      },
    ],
  });
}

/** How far a peg may stand off its place, mm. */
const WITHIN = 0.05;

/** D13: a peg that is off its place by two independent normal offsets is off by a distance that follows the Rayleigh law. */
const d13 = caseOf<number>({
  id: 'D13',
  what: 'a peg off its place by normal offsets of 0.02 mm along two axes, seen as it leaves',
  source: 'Rayleigh law',
  length: 40_000,
  scenario: scenarioText(60, {
    stock: { sheet: { unlimited: true } },
    parts: {
      tray: {
        features: Object.fromEntries(
          ['along', 'across'].map((name) => [
            name,
            { nominal: mm(0), 'made-at': 'forming', 'own-sd': mm(0.02) },
          ]),
        ),
      },
    },
    stations: {
      forming: { does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 1, cycle: s(1), to: 'good' },
    },
  }),
  see: (scenario, seed) => {
    const line = prepare(scenario, 'carry on', seed);
    const [along, across] = ['along', 'across'].map((name) => line.features.get(name)!.truth);
    let [within, all] = [0, 0];
    line.good.leaving.push((row) => {
      all++;
      if (Math.hypot(line.parts.get(row, along!), line.parts.get(row, across!)) <= WITHIN) within++;
    });
    line.calendar.run(scenario.run.warmUp + scenario.run.length);
    return within / all;
  },
  values: [
    {
      quantity: `share within ${WITHIN} mm`,
      expected: 1 - Math.exp(-(WITHIN ** 2) / (2 * 0.02 ** 2)),
      sharp: 0.001,
      of: (share) => share,
    },
  ],
});

/** D11, D12, O16. Were the pegs of D12 independent, 2, 4 and 8 would clear in 0.966392, 0.933914 and 0.872196. */
export const FORMING: readonly Case[] = [
  d13,
  ...(
    [
      [2, 0.333333, 'own'],
      [3, 0.25, 'sheet'],
      [4, 0.2, 'mate'],
      [6, 0.142857, 'own'],
    ] as const
  ).map(([n, expected, common]) =>
    clearing({ id: `D11 n=${n}, ${common}`, n, m: 0, sig: 0.1, expected, sharp: 0.01, common }),
  ),
  ...(
    [
      [2, 0.968795, 'own'],
      [4, 0.945311, 'sheet'],
      [4, 0.945311, 'mate lot'],
      [8, 0.909839, 'own'],
    ] as const
  ).map(([n, expected, common]) =>
    clearing({ id: `D12 n=${n}, ${common}`, n, m: 0.03, sig: 0.01, expected, sharp: 0.001, common }),
  ),
  wandering(0.5),
  wandering(0.9),
];
