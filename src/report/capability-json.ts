import { CAPABILITY_KEYS, type CapabilityEstimate, type CapabilityKey } from '../experiment/capabilities.ts';
import { meanJson } from './estimate-json.ts';

const KEYS = {
  readings: 'readings',
  mean: 'mean_mm',
  sdWithin: 'sd_within_mm',
  sdOverall: 'sd_overall_mm',
  cp: 'cp',
  cpk: 'cpk',
  pp: 'pp',
  ppk: 'ppk',
} as const satisfies Record<CapabilityKey, string>;

/** Capabilities as data: each value with the mean over the runs and its interval; null is no value. */
export function capabilitiesJson(capabilities: readonly CapabilityEstimate[]): object[] {
  return capabilities.map(({ gauge, feature, estimates }) => ({
    gauge,
    feature,
    ...Object.fromEntries(
      CAPABILITY_KEYS.map((key) => {
        const found = estimates[key];
        return [KEYS[key], found && meanJson(found)];
      }),
    ),
  }));
}
