import type { Path } from '../problem.ts';
import type { ResponseOf, ResponseSpec } from '../responses.ts';
import { originalsOf } from '../stand-ins.ts';
import { nameOf, unitsOf } from '../units.ts';
import { checkCannibalising } from './check-cannibalising.ts';
import { checkCalledCrew, checkPrioritised } from './check-crew-response.ts';
import { checkKeeping } from './check-keeping.ts';
import { checkRejecting } from './check-rejecting.ts';
import { checkRerouted } from './check-rerouting.ts';
import { checkDrawn } from './check-reserve.ts';
import { checkRetuning } from './check-retuning.ts';
import { checkSkipped } from './check-skipping.ts';
import { checkSlowed, checkSpedUp } from './check-speed.ts';
import { checkToolChange } from './check-tool-change.ts';
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

/** Arrivals wait for nobody. */
function checkHeld(check: Checker, { station }: ResponseOf<'hold' | 'stop-and-fix'>, path: Path): void {
  check.station([...path, 'station'], station, []);
  if (check.stations.get(station)?.does === 'arrive')
    check.say(
      [...path, 'station'],
      `parts come to "${station}" by themselves, whatever a policy does; hold a station behind it`,
    );
}

function checkExpedited(check: Checker, { stock }: ResponseOf<'expedite'>, path: Path): void {
  if (!check.known([...path, 'stock'], stock, check.names.stock, 'stock')) return;
  const found = check.stock(stock);
  if (found && !found.expedite)
    check.say(
      [...path, 'stock'],
      `no order of "${stock}" can be sped up; give the stock "expedite: { lead-time: 2 h }"`,
    );
}

function checkRetargeted(check: Checker, { setting, by }: ResponseOf<'retarget'>, path: Path): void {
  if (!check.known([...path, 'setting'], setting, check.names.settings, 'setting of a forming station'))
    return;
  const own = check.raw.stations
    .flatMap((station) => (station.does === 'form' ? (station.settings ?? []) : []))
    .find(({ name }) => name === setting);
  if (own === undefined) return;
  const { target, moves } = own;
  const then = target.value + by.value;
  if (by.dimension !== target.dimension)
    check.say(
      [...path, 'by'],
      `"${setting}" is ${nameOf(target.dimension)}, so expected a change in its units (${unitsOf(target.dimension).join(', ')})`,
    );
  else if ((moves?.from && then < moves.from.value) || (moves?.to && then > moves.to.value))
    check.say([...path, 'by'], `"${setting}" cannot be moved so far; see its "moves"`);
}

function checkSubstituted(check: Checker, it: ResponseOf<'substitute'>, path: Path): void {
  const { stock } = check.raw;
  const known = [it.for, it.by].map((name, i) =>
    check.known([...path, i === 0 ? 'for' : 'by'], name, check.names.stock, 'stock'),
  );
  if (known.includes(false) || stock.length < check.names.stock.length) return;
  if (it.by === it.for || !originalsOf(it.by, stock).includes(it.for))
    check.say(
      [...path, 'by'],
      it.by === it.for
        ? 'a stock cannot take its own place; name one that stands in for it'
        : `"${it.by}" does not stand in for "${it.for}"; give that stock "stands-in-for: ${it.for}"`,
    );
  const takes = check.raw.stations.flatMap((station) => ('takes' in station ? (station.takes ?? []) : []));
  if (
    check.stations.size === check.names.stations.length &&
    !originalsOf(it.for, stock).some((name) => takes.includes(name))
  )
    check.say([...path, 'for'], `no station takes "${it.for}"`);
}

/** Parts that are put aside keep their carriers, and would be given another as they are taken up again. */
function checkAhead(check: Checker, { at, without }: ResponseOf<'build-ahead'>, path: Path): void {
  check.station([...path, 'at'], at, ['assemble']);
  const station = check.stations.get(at);
  if (station?.does !== 'assemble') return;
  check.known([...path, 'without'], without, station.takes, `mate that "${at}" takes`);
  const carriers = check.raw.carriers.find(({ from }) => from === at);
  if (carriers)
    check.say(
      [...path, 'at'],
      `parts take the carriers "${carriers.name}" here, so they cannot be put aside; let a station before it take them`,
    );
}

/** Whether what a response watches and changes is there and can be watched and changed. */
export function checkResponse(check: Checker, it: ResponseSpec, path: Path): void {
  switch (it.do) {
    case 'stop-and-fix': {
      checkHeld(check, it, path);
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
    case 'hold':
      return checkHeld(check, it, path);
    case 'slow':
      return checkSlowed(check, it, path);
    case 'expedite':
      return checkExpedited(check, it, path);
    case 'retarget':
      return checkRetargeted(check, it, path);
    case 'substitute':
      return checkSubstituted(check, it, path);
    case 'build-ahead':
      return checkAhead(check, it, path);
    case 'keep':
      return checkKeeping(check, it, path);
    case 'cannibalise':
      return checkCannibalising(check, it, path);
    case 'speed-up':
      return checkSpedUp(check, it, path);
    case 'reject':
      return checkRejecting(check, it, path);
    case 'change-tool':
      return checkToolChange(check, it, path);
    case 'prioritise':
      return checkPrioritised(check, it, path);
    case 'draw-on-reserve':
      return checkDrawn(check, it, path);
    case 'reroute':
      return checkRerouted(check, it, path);
    case 'skip':
      return checkSkipped(check, it, path);
    case 'call-crew':
      return checkCalledCrew(check, it, path);
    case 'foresee':
      // What it may stand with is said of policies.
      return;
  }
}
