import type { Path } from '../problem.ts';
import type { SpecOf } from '../stations.ts';
import type { Checker } from './checker.ts';

/** What a rework station corrects. */
export function checkRework(check: Checker, station: SpecOf<'rework'>, path: Path): void {
  for (const { name } of station.corrects)
    check.known([...path, 'corrects', name], name, check.names.features, 'feature');
}
