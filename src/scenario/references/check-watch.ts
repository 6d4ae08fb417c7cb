import type { SightCondition } from '../conditions/sights.ts';
import type { WatchCondition } from '../conditions.ts';
import type { Path } from '../problem.ts';
import type { ReadingWatch } from '../watches.ts';
import type { Checker } from './checker.ts';

/** Whether what is watched can be seen there. */
export function checkWatch(check: Checker, watch: WatchCondition, path: Path): void {
  if ('sees' in watch) checkSights(check, watch, path);
  else checkReadings(check, watch, path);
}

function checkSights(check: Checker, { at, sees }: SightCondition, path: Path): void {
  check.station([...path, 'at'], at, ['gauge', 'assemble']);
  const station = check.stations.get(at);
  if (station?.does === 'gauge' && sees === 'misfits')
    check.say([...path, 'sees'], `"${at}" gauges; misfits are seen where parts are assembled`);
  if (station?.does === 'assemble' && sees === 'off-limits')
    check.say([...path, 'sees'], `"${at}" assembles; readings off limits are seen where parts are gauged`);
  if (sees === 'unread' && station && !('reader' in station && station.reader))
    check.say([...path, 'sees'], `"${at}" has no reader, so no mark can go unread there`);
}

/** A centre further than this from what the feature should be is a slip of the pen. */
const MOST_SIGMAS_OFF = 30;

/** Whether a gauge measures the feature. */
export function checkMeasured(
  check: Checker,
  { at, of }: { readonly at: string; readonly of: string },
  path: Path,
): boolean {
  check.station([...path, 'at'], at, ['gauge']);
  if (!check.known([...path, 'of'], of, check.names.features, 'feature')) return false;
  const gauge = check.stations.get(at);
  if (gauge?.does !== 'gauge') return false;
  const measured = gauge.measures.map(({ name }) => name);
  return check.known([...path, 'of'], of, measured, `feature that "${at}" measures`);
}

/** A chart or a capability needs a gauge that measures the feature; a capability needs limits to be held against. */
function checkReadings(check: Checker, watch: ReadingWatch, path: Path): void {
  if (!checkMeasured(check, watch, path)) return;
  const feature = check.raw.parts?.flatMap((part) => part.features).find(({ name }) => name === watch.of);
  if ('chart' in watch && feature && watch.centre !== undefined && watch.sigma !== undefined) {
    const sigmas = Math.abs(watch.centre - feature.aim) / watch.sigma;
    if (sigmas > MOST_SIGMAS_OFF)
      check.say(
        [...path, 'centre'],
        `${watch.centre} mm is ${Math.round(sigmas)} sigmas from ${feature.aim} mm, what "${watch.of}" should be, so the chart would signal at once; mend the centre or sigma`,
      );
  }
  if ('capability' in watch && feature && feature.limits === null)
    check.say(
      [...path, 'of'],
      `"${watch.of}" has no limits, so it has no capability; give it a tolerance, or watch it by a chart`,
    );
}
