import { type Keys, s, scenarioText } from './scenario-text.ts';

/** What a gauged feature should be, mm. */
export const AIM = 100;

interface GaugedLine {
  readonly features: Keys;
  /** Keys of the forming station besides its own. */
  readonly forming?: Keys;
  readonly disturbances?: Keys;
  readonly policies?: Keys;
}

/** Parts formed one by one, each gauged without error half a second later, as a scenario of so many seconds. */
export const gaugedLine = (
  cycle: number,
  { features, forming = {}, ...rest }: GaugedLine,
): ((length: number) => string) =>
  scenarioText(0, {
    stock: { sheet: { unlimited: true } },
    parts: { tray: { features } },
    stations: {
      forming: {
        ...{ does: 'form', takes: 'sheet', makes: 'tray', 'per-sheet': 1, cycle: s(cycle) },
        ...forming,
        to: 'gauging',
      },
      gauging: {
        ...{ does: 'gauge', buffer: 1, cycle: s(0.5), every: 1, 'off-limits': 'pass', to: 'good' },
        measures: Object.fromEntries(
          Object.keys(features).map((feature) => [feature, { repeatability: '0 mm' }]),
        ),
      },
    },
    ...rest,
  });
