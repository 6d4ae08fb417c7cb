import type { Path } from '../problem.ts';
import type { ResponseSpec } from '../responses.ts';
import { checkRetuning } from './check-retuning.ts';
import { checkWatch } from './check-watch.ts';
import type { Checker } from './checker.ts';

/** A station that inspects lots has a plan of its own for which parts it gauges. */
function checkInspected(check: Checker, at: string, path: Path): void {
  const station = check.stations.get(at);
  if (station?.does === 'gauge' && station.inspection.by === 'plan')
    check.say(
      [...path, 'at'],
      `"${at}" inspects lots by its acceptance plan, so it cannot gauge one part in so many; take one of them out`,
    );
}

/** Whether what a response watches and changes is there and can be watched and changed. */
export function checkResponse(check: Checker, it: ResponseSpec, path: Path): void {
  switch (it.do) {
    case 'stop-and-fix': {
      check.station([...path, 'station'], it.station, []);
      checkWatch(check, it.watch, [...path, 'watch']);
      return;
    }
    case 'inspect':
      check.station([...path, 'at'], it.at, ['gauge']);
      checkInspected(check, it.at, path);
      if (it.offLimits !== undefined) check.reject([...path, 'off-limits'], it.offLimits, ['pass', 'scrap']);
      return;
    case 'retune':
      return checkRetuning(check, it, path);
    case 'match':
      return check.station([...path, 'at'], it.at, ['assemble']);
    case 'rework':
      check.station([...path, 'at'], it.at, ['gauge', 'assemble']);
      return check.station([...path, 'bench'], it.bench, ['rework']);
  }
}
