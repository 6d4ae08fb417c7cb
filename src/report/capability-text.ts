import { CAPABILITY_KEYS, type CapabilityEstimate, type CapabilityKey } from '../experiment/capabilities.ts';
import type { Estimate } from '../statistics/estimate.ts';
import { fixed } from './format.ts';

/** Words and decimals: lengths to the micrometre. */
const SHOWN = {
  readings: { name: 'readings a run', decimals: 0 },
  mean: { name: 'mean, mm', decimals: 3 },
  sdWithin: { name: 'sd from one reading to the next, mm', decimals: 3 },
  sdOverall: { name: 'sd of all readings, mm', decimals: 3 },
  cp: { name: 'Cp', decimals: 2 },
  cpk: { name: 'Cpk', decimals: 2 },
  pp: { name: 'Pp', decimals: 2 },
  ppk: { name: 'Ppk', decimals: 2 },
} as const satisfies Record<CapabilityKey, { name: string; decimals: number }>;

/** One row of a feature's table. */
interface CapabilityRow {
  readonly name: string;
  readonly mean: string;
  readonly interval: string;
}

function intervalText({ lower, upper }: Estimate, decimals: number): string {
  if (lower === null || upper === null) return 'no interval';
  return `${fixed(lower, decimals)} to ${fixed(upper, decimals)}`;
}

/** What is shown of a feature at a gauge, without what no run gives; nothing where nothing was read. */
export function capabilityRows({ estimates }: CapabilityEstimate): CapabilityRow[] {
  if (!estimates.readings?.value) return [];
  return CAPABILITY_KEYS.flatMap((key) => {
    const found = estimates[key];
    const { name, decimals } = SHOWN[key];
    if (found === null) return [];
    return [{ name, mean: fixed(found.value, decimals), interval: intervalText(found, decimals) }];
  });
}
