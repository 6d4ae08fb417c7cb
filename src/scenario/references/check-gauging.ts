import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import type { Checker } from './checker.ts';

/** What a gauging station measures, and where what is off limits goes. */
export function checkGauging(check: Checker, station: SpecOf<'gauge'>, path: Path): void {
  for (const { name } of station.measures)
    check.known([...path, 'measures', name], name, check.names.features, 'feature');
  check.reject([...path, 'off-limits'], station.offLimits, ['pass', 'scrap']);
}
