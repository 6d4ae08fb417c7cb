import { prepare } from '../../../src/experiment/simulate.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { type Case, caseOf } from './case.ts';
import { type Keys, s, scenarioText } from './scenario-text.ts';

const NOMINAL = 100;

/** Trays whose rim follows lengths that are set anew for each sheet. */
const formedBy = (settings: Keys, follows: Keys) =>
  scenarioText(0, {
    stock: { sheet: { unlimited: true } },
    parts: { tray: { features: { rim: { nominal: `${NOMINAL} mm`, 'made-at': 'forming', ...follows } } } },
    stations: {
      forming: {
        ...{ does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 1, cycle: s(1) },
        ...{ settings, to: 'good' },
      },
    },
  });

/** The rim of each part as the difference from nominal, mm. */
function deviations(scenario: Scenario, seed: number): number[] {
  const line = prepare(scenario, 'carry on', seed);
  const { truth } = line.features.get('rim')!;
  const seen: number[] = [];
  line.good.leaving.push((row) => seen.push(line.parts.get(row, truth) - NOMINAL));
  line.calendar.run(scenario.run.warmUp + scenario.run.length);
  return seen;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

const LINKS = ['one', 'two', 'three', 'four', 'five'];
const stackOf = (link: Keys) =>
  formedBy(Object.fromEntries(LINKS.map((name) => [name, { target: '10 mm', ...link }])), {
    gains: Object.fromEntries(LINKS.map((name) => [name, '1 mm/mm'])),
  });

const byRoots = caseOf<number[]>({
  id: 'D14 root sum square',
  what: 'a stack of five links of sd 0.1 mm',
  source: 'texts on tolerance stacks: the root of the sum of squares',
  length: 400_000,
  scenario: stackOf({ 'cycle-sd': '0.1 mm' }),
  see: deviations,
  values: [
    {
      ...{ quantity: 'standard deviation', unit: 'mm', expected: 0.223607, sharp: 0.005 },
      of: (seen) => Math.sqrt(mean(seen.map((value) => value ** 2))),
    },
  ],
});

const worst = caseOf<number[]>({
  id: 'D14 worst case',
  what: 'a stack of five links, each 0.1 mm too large',
  source: 'texts on tolerance stacks: the sum',
  exact: true,
  length: 250,
  scenario: stackOf({ 'sensor-bias': '-0.1 mm' }),
  see: deviations,
  values: [{ quantity: 'deviation', unit: 'mm', expected: 0.5, of: (seen) => mean(seen) }],
});

/** D14: features that follow several lengths. */
export const STACKS: readonly Case[] = [byRoots, worst];
