import type { Scenario } from '../../../scenario/scenario.ts';
import type { Cases } from '../source.ts';

/** Which cavity a part comes from: each makes as many. */
export function cavityCases({ parts, stations }: Scenario): Cases[] {
  const features = parts.flatMap((part) => part.features);
  return stations.flatMap((station) => {
    if (station.does !== 'form') return [];
    const cut = features.filter(({ madeAt, cavities }) => madeAt === station.name && cavities);
    if (cut.length === 0) return [];
    const share = 1 / station.perSheet;
    const cases = Array.from({ length: station.perSheet }, (_, i) => ({
      share,
      shifts: new Map(cut.map(({ name, cavities }) => [name, cavities?.[i] ?? 0])),
    }));
    return [{ name: 'cavity', cases }];
  });
}
