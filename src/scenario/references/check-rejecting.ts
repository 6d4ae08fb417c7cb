import type { Path } from '../problem.ts';
import type { ResponseOf } from '../responses.ts';
import type { Checker } from './checker.ts';

/** Whether the station has rejects, and where they may go: what does not fit is not put together by passing on. */
export function checkRejecting(check: Checker, { at, to }: ResponseOf<'reject'>, path: Path): void {
  check.station([...path, 'at'], at, ['gauge', 'assemble']);
  const assembles = check.stations.get(at)?.does === 'assemble';
  if (assembles && to === 'pass')
    check.say(
      [...path, 'to'],
      `what does not fit at "${at}" cannot pass on; send it to scrap or to a rework station`,
    );
  else check.reject([...path, 'to'], to, assembles ? ['scrap'] : ['pass', 'scrap']);
}
