import { compare } from '../../src/experiment/comparison.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import type { PageSource } from '../../src/report/page.ts';
import { outcome, wobble } from './fake.ts';

/** Four made-up policies, one with a long name, under thirty seeds. */
export function sampleOutcomes(): Outcome[] {
  const names = [
    'no response',
    'adjust the former',
    'adjust, rework and hold back until the gauge agrees',
    'rework',
  ];
  return names.flatMap((name, p) =>
    Array.from({ length: 30 }, (_, i) => {
      const luck = wobble(9, i);
      const own = (k: number) => wobble(p * 7 + k, i);
      return outcome(name, i + 1, {
        throughput_per_h: 41 + 1.6 * p + 2 * luck + 1.2 * own(1),
        scrap_rate: 0.08 - 0.012 * p + 0.01 * luck + 0.004 * own(2),
        fit_rate: 0.86 + (p === 3 ? 0.001 : 0.03 * p) + 0.02 * luck + 0.01 * own(3),
        rework_rate: p < 2 ? 0 : 0.07 + 0.02 * own(4),
        work_in_progress_parts: 14 + p * 0.8 + own(5),
        lead_time_s: 1180 + 22 * p + 60 * own(6),
      });
    }),
  );
}

export function samplePage(title = 'Tray cell with a drifting former'): PageSource {
  const outcomes = sampleOutcomes();
  return {
    comparison: compare([...new Set(outcomes.map(({ policy }) => policy))], outcomes),
    title,
    about:
      'Sheet is formed into trays, trimmed, marked and assembled with lids.\n\nThe former drifts on purpose.',
    scenarioText: 'title: Tray cell <with> & "marks"\nstations:\n  form: { makes: tray }\n',
    provenance: {
      file: 'scenarios/tray-cell.yaml',
      sha256: '0'.repeat(64),
      version: '0.1.0',
      command: 'mendline compare scenarios/tray-cell.yaml --seeds 30',
      seeds: '1 to 30',
    },
    warnings: ['Stock "lids" ran out in 3 of 120 runs.'],
  };
}
