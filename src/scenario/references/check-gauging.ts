import type { Path } from '../problem.ts';
import { isSource, type SpecOf } from '../stations.ts';
import { checkWarmReading } from './check-warmth.ts';
import type { Checker } from './checker.ts';

/** Lengths are written in several units and added in binary. */
const ROUNDING = 1e-9;

/** The limits of a feature, null without; undefined where it is unknown or has problems of its own. */
function limitsOf(check: Checker, name: string) {
  return check.raw.parts?.flatMap((part) => part.features).find((feature) => feature.name === name)?.limits;
}

function checkReadings(check: Checker, station: SpecOf<'gauge'>, path: Path): void {
  for (const reading of station.measures) {
    const { name, guard } = reading;
    const at = [...path, 'measures', name];
    if (!check.known(at, name, check.names.features, 'feature')) continue;
    checkWarmReading(check, reading, at);
    if (guard === 0) continue;
    const limits = limitsOf(check, name);
    if (limits === null)
      check.say(
        [...at, 'guard'],
        `"${name}" has no limits to draw in; give it a tolerance, or take "guard" out`,
      );
    else if (limits && 2 * guard >= (limits.upper - limits.lower) * (1 - ROUNDING))
      check.say(
        [...at, 'guard'],
        `it leaves nothing to accept between the limits of "${name}", ${Number((limits.upper - limits.lower).toPrecision(9))} mm apart; give less than half of that`,
      );
  }
  if (station.appraisers > 1 && station.measures.every(({ reproducibility }) => reproducibility === 0))
    check.say(
      [...path, 'appraisers'],
      'they differ in nothing; give a reading its "reproducibility", or take "appraisers" out',
    );
}

/** A lot waits in front of the station until it is complete; what is judged of it are readings with limits. */
function checkLots(
  check: Checker,
  station: SpecOf<'gauge'>,
  path: Path,
  lot: number,
  rejected: string,
): void {
  check.reject([...path, 'acceptance', 'rejected'], rejected, ['screen', 'scrap']);
  if (lot > station.buffer.places)
    check.say(
      [...path, 'acceptance', 'lot'],
      `${lot} parts never gather in a buffer of ${station.buffer.places}; make the lot smaller, or the buffer larger`,
    );
  if (station.measures.every(({ name }) => limitsOf(check, name) === null))
    check.say(
      [...path, 'acceptance'],
      'nothing that is read here has limits, so every lot would be accepted; give a feature its tolerance',
    );
}

/** Parts belong to a delivery by the stock they were made from. */
function checkDeliveries(check: Checker, station: SpecOf<'gauge'>, path: Path): void {
  for (const source of check.raw.stations) {
    if (!isSource(source) || !check.ways.lead(source.name, station.name)) continue;
    if (source.does === 'arrive')
      check.say(
        [...path, 'first-of-lot'],
        `parts that arrive at "${source.name}" belong to no delivery; use "every"`,
      );
    else if ('takes' in source && check.stock(source.takes as string)?.unlimited)
      check.say(
        [...path, 'first-of-lot'],
        `the stock "${source.takes}" is unlimited, so no delivery of it ever begins; use "every"`,
      );
  }
}

/** What a gauging station measures and which parts, and where what is off limits goes. */
export function checkGauging(check: Checker, station: SpecOf<'gauge'>, path: Path): void {
  checkReadings(check, station, path);
  check.reject([...path, 'off-limits'], station.offLimits, ['pass', 'scrap']);
  const { inspection } = station;
  if (inspection.by === 'plan') checkLots(check, station, path, inspection.lot, inspection.rejected);
  if (inspection.by === 'delivery') checkDeliveries(check, station, path);
}
