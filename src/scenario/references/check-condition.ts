import type { BufferCondition } from '../conditions/buffer.ts';
import type { DemandCondition } from '../conditions/demand.ts';
import type { ResponseCondition } from '../conditions/response.ts';
import type { StationCondition } from '../conditions/station.ts';
import type { StockCondition } from '../conditions/stock.ts';
import { type ConditionSpec, isWatch, partsOf } from '../conditions.ts';
import type { Path } from '../problem.ts';
import type { ResponseSpec } from '../responses.ts';
import { checkMeasured, checkWatch } from './check-watch.ts';
import type { Checker } from './checker.ts';

/** The response that a condition belongs to, by its name, among those of its policy. */
export interface Around {
  readonly self: string | undefined;
  readonly responses: readonly ResponseSpec[];
  /** Whether all of the policy's responses are here. */
  readonly whole: boolean;
}

/** Whether what a condition goes by is there and can become so. */
export function checkCondition(check: Checker, it: ConditionSpec, path: Path, policy: Around): void {
  if ('all' in it) {
    for (const [i, part] of it.all.entries()) checkCondition(check, part, [...path, 'all', i], policy);
    if (it.all.filter(isWatch).length > 1)
      check.say(
        [...path, 'all'],
        'two watches never signal together, since each signal is over at once; name one of them, or "any" of them',
      );
  } else if ('any' in it) {
    for (const [i, part] of it.any.entries()) checkCondition(check, part, [...path, 'any', i], policy);
  } else if ('not' in it) {
    checkCondition(check, it.not, [...path, 'not'], policy);
    if (partsOf(it.not).some(isWatch))
      check.say(
        [...path, 'not'],
        'a watch signals, which is over at once, so it is nearly always without one; take "at-most" for few, or readings with "above" or "below"',
      );
  } else if (isWatch(it)) checkWatch(check, it, path);
  else if ('stock' in it) checkStockLevel(check, it, path);
  else if ('buffer' in it) checkBuffer(check, it, path, policy);
  else if ('station' in it) checkState(check, it, path, policy);
  else if ('demand' in it) checkDemand(check, it, path);
  else if ('calendar' in it)
    check.known([...path, 'calendar'], it.calendar, check.names.calendars, 'calendar');
  else if ('response' in it) checkOther(check, it, path, policy);
  else if ('of' in it) checkMeasured(check, it, path);
}

function checkStockLevel(check: Checker, { stock }: StockCondition, path: Path): void {
  if (!check.known([...path, 'stock'], stock, check.names.stock, 'stock')) return;
  if (check.stock(stock)?.unlimited)
    check.say(
      [...path, 'stock'],
      `"${stock}" is unlimited, so it is never low; give it "on-hand", or name another stock`,
    );
}

function checkBuffer(check: Checker, it: BufferCondition, path: Path, { responses }: Around): void {
  check.station([...path, 'buffer'], it.buffer, []);
  const station = check.stations.get(it.buffer);
  if (station === undefined) return;
  if (!('buffer' in station) || station.buffer === undefined)
    return check.say(
      [...path, 'buffer'],
      `"${it.buffer}" has no buffer, since parts begin there; go by a station behind it, or by its stock`,
    );
  const { places } = station.buffer;
  const banked = responses.some((other) => other.do === 'match' && other.at === it.buffer && other.bank);
  if ('above' in it && it.above >= places && !banked)
    check.say(
      [...path, 'above'],
      `the buffer of "${it.buffer}" has ${places} places, so there are never more than ${it.above} parts; take less`,
    );
}

function checkOther(check: Checker, it: ResponseCondition, path: Path, policy: Around): void {
  const { response: name } = it;
  if (name === policy.self)
    return check.say(
      [...path, 'response'],
      `this is the response "${name}" itself, so it would trigger itself; name another`,
    );
  if (!policy.whole) return;
  const known = policy.responses.flatMap((other) => ('name' in other && other.name ? [other.name] : []));
  check.known([...path, 'response'], name, known, 'name of a response of this policy');
}

/** What may hold a station. */
const holds = (it: ResponseSpec, station: string) =>
  (it.do === 'hold' || it.do === 'stop-and-fix') && it.station === station;

function checkState(check: Checker, it: StationCondition, path: Path, { responses }: Around): void {
  check.station([...path, 'station'], it.station, []);
  const station = check.stations.get(it.station);
  if (station === undefined) return;
  if (it.machines !== undefined && it.machines > station.machines)
    check.say(
      [...path, 'machines'],
      `"${it.station}" has ${station.machines === 1 ? '1 machine' : `${station.machines} machines`}`,
    );
  const never = (state: string, why: string) =>
    it.is.length === 1 && it.is[0] === state && check.say([...path, 'is'], why);
  if (!responses.some((other) => holds(other, it.station)))
    never(
      'held',
      `no response of this policy holds "${it.station}", so it is never held; let one "do: hold" it`,
    );
  if (station.calendar === undefined)
    never(
      'off-shift',
      `"${it.station}" follows no calendar, so it is never off shift; name a "calendar" there`,
    );
}

function checkDemand(check: Checker, it: DemandCondition, path: Path): void {
  const { demand } = check.raw;
  if (demand === undefined) {
    if (!check.names.given(['demand']))
      check.say(
        [...path, 'demand'],
        'there are no orders, since all that is made is taken; give the scenario a "demand"',
      );
    return;
  }
  const { most } = demand.finishedGoods;
  if (it.demand === 'finished-goods' && 'above' in it && it.above >= most)
    check.say(
      [...path, 'above'],
      `there is room for ${most} finished goods, so there are never more than ${it.above}; take less`,
    );
}
