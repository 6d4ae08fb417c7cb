import type { Outcome } from '../../../src/line/outcome.ts';
import { type Case, caseOf } from './case.ts';
import { type Keys, scenarioText } from './scenario-text.ts';
import { outcome } from './see.ts';

/** Trays with one hole meet plates with pegs; all keys of the features as a scenario has them. */
function assembly(hole: Keys, pegs: readonly Keys[], pair: Keys, joining: Keys = {}) {
  const name = (i: number) => `peg${i}`;
  const features = Object.fromEntries(pegs.map((peg, i) => [name(i), peg]));
  return scenarioText(60, {
    stock: { sheet: { unlimited: true }, plate: { unlimited: true, features } },
    parts: { tray: { features: { hole: { ...hole, 'made-at': 'forming' } } } },
    stations: {
      forming: {
        ...{ does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 2, cycle: '10 s', to: 'joining' },
      },
      joining: {
        ...{ does: 'assemble', buffer: 4, takes: ['plate'], cycle: '2 s', misfit: 'scrap' },
        fits: pegs.map((_, i) => ({ hole: 'hole', shaft: `plate.${name(i)}`, ...pair })),
        ...{ ...joining, to: 'good' },
      },
    },
  });
}

const CLEARS: Keys = { least: '0 mm', most: '100 mm' };
const HOLE: Keys = { nominal: '25 mm', class: 'H7', capability: 1 };
const PEG: Keys = { nominal: '25 mm', class: 'k6', capability: 1 };
const fitRate = ({ measures }: Outcome) => measures.fit_rate!;
const share = (count: 'forced' | 'damaged' | 'tight') => (of: Outcome) =>
  of.counts[count] / of.counts.firstAttempts;

/**
 * H7/k6 at 25 mm: hole 0 to +21 µm, shaft +2 to +15 µm (ISO 286-2), both centred, a sixth of the tolerance as standard
 * deviation: the clearance is normal with mean 2 µm and standard deviation 4.11636 µm.
 */
const d10 = caseOf<Outcome>({
  id: 'D10',
  what: 'peg and hole H7/k6 at 25 mm of capability 1',
  source: 'the difference of two normals; limits by ISO 286-2',
  length: 900_000,
  scenario: assembly(HOLE, [PEG], CLEARS),
  see: outcome,
  values: [{ quantity: 'share that clears', expected: 0.686469, of: fitRate }],
});

/** Of a press that closes up to 4 µm: 80 N at 20 N/µm. It spoils a tenth of what it closes. */
const forced = caseOf<Outcome>({
  id: 'D10 pressed',
  what: 'the same, pressed together up to 4 µm of interference, a tenth spoilt',
  source: 'the normal law',
  option: '`forcing`',
  length: 900_000,
  scenario: assembly(HOLE, [PEG], CLEARS, {
    forcing: { stiffness: '20000 N/mm', limit: '80 N', damages: '10 %' },
  }),
  see: outcome,
  values: [
    { quantity: 'share that clears', expected: 0.686469, of: fitRate },
    // Phi(-2/4.11636) - Phi(-6/4.11636) = 0.241055: nine tenths of it, and a tenth.
    { quantity: 'share forced', expected: 0.21695, of: share('forced') },
    { quantity: 'share damaged', expected: 0.0241055, sharp: 0.03, of: share('damaged') },
    { quantity: 'share too tight', expected: 0.0724758, sharp: 0.02, of: share('tight') },
  ],
});

const normal = (nominal: number, sd: number): Keys => ({ nominal: `${nominal} mm`, 'own-sd': `${sd} mm` });

/** Pegs that share the hole's deviation: one hole that is small is so for all of them. */
function pegs(id: string, number: number, margin: number, expected: number, source: string): Case {
  return caseOf<Outcome>({
    id: `${id} n=${number}`,
    what: `${number} pegs on one hole, all of standard deviation 0.01 mm, with a clearance of ${margin} mm`,
    source,
    length: 900_000,
    scenario: assembly(normal(10 + margin, 0.01), Array(number).fill(normal(10, 0.01)), CLEARS),
    see: outcome,
    values: [{ quantity: 'share in which all clear', expected, of: fitRate }],
  });
}

const ORTHANT =
  'orthant probability at correlation one half, Y. L. Tong (1990), The Multivariate Normal Distribution';
const ONE_FACTOR = 'one-factor normal model, by quadrature';

/** D10 to D12. */
export const FITS: readonly Case[] = [
  d10,
  forced,
  // Without margin 1/(n + 1).
  pegs('D11', 2, 0, 1 / 3, ORTHANT),
  pegs('D11', 4, 0, 1 / 5, ORTHANT),
  // Were the pegs independent: 0.966392, 0.933914.
  pegs('D12', 2, 0.03, 0.968795, ONE_FACTOR),
  pegs('D12', 4, 0.03, 0.945311, ONE_FACTOR),
];
