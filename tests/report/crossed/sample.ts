import { type Crossed, crossed } from '../../../src/experiment/crossed.ts';
import type { CrossedRun } from '../../../src/experiment/plan-crossed.ts';
import { outcome, wobble } from '../fake.ts';

/** Hostile on purpose. */
export const CASES = ['a <stop> & "more"', 'a case of a name that goes on and on until it has to be cut'];
export const POLICIES = ['carry on', 'retune <forming>', 'stop and fix all that there is'];
export const SEVERITIES = [0, 0.5, 1, 2];

/** Made-up runs: the second policy costs a little, and keeps up in the first case. */
export function sampleRuns(seeds: number): CrossedRun[] {
  const levels = [
    (severity: number) => 100 - 30 * severity,
    (severity: number) => 90 - 5 * severity,
    (severity: number) => 60 + severity,
  ];
  return CASES.flatMap((name, of) =>
    SEVERITIES.flatMap((severity) =>
      POLICIES.flatMap((policy, p) =>
        Array.from({ length: seeds }, (_, i) => {
          const level = levels[p]!(of === 0 ? severity : 0);
          const luck = wobble(p, i + 1 + 10 * severity) * (p === 2 ? 9 : 3);
          const measures = { throughput_per_h: level + luck, ...(p < 2 && { fit_rate: 0.5 }) };
          return { case: name, severity, outcome: outcome(policy, i + 1, measures) };
        }),
      ),
    ),
  );
}

export const sampleCrossed = (
  seeds: number,
  key: 'throughput_per_h' | 'fit_rate' = 'throughput_per_h',
): Crossed => crossed({ cases: CASES, severities: SEVERITIES, policies: POLICIES }, sampleRuns(seeds), key);
