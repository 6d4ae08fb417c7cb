import { suggestion } from '../nearest.ts';

/** What no policy can see, by the key it might be asked for, and what can be seen instead. */
const HIDDEN: Readonly<Record<string, string>> = {
  feature:
    'what a feature truly is, nobody sees; go by its readings: { at: GAUGE, of: FEATURE, above: 120.3 mm }',
  dimension:
    'what a dimension truly is, nobody sees; go by readings: { at: GAUGE, of: FEATURE, above: 120.3 mm }',
  true: 'true values are seen by nobody; go by readings: { at: GAUGE, of: FEATURE, above: 120.3 mm }',
  luck: 'what is drawn for a part is seen by nobody; go by what comes of it: sights, readings, charts',
  disturbance:
    'when a disturbance begins and ends, nobody is told; go by what it does: readings, a chart, sights, a stock, a state of a station',
  disturbs:
    'when a disturbance begins and ends, nobody is told; go by what it does: readings, a chart, sights, a stock, a state of a station',
  setting:
    'how far a setting is off, nobody sees; go by readings or a chart of a feature that it moves: { at: GAUGE, of: FEATURE, chart: … }',
  flaw: 'a flaw is seen only where parts are gauged or assembled: { at: STATION, sees: off-limits, count: 3, of-last: 20 }',
  fit: 'whether parts will fit is seen only as they are assembled: { at: STATION, sees: misfits, count: 3, of-last: 20 }',
  supplier: 'whether a supplier is out, nobody is told; go by the stock: { stock: NAME, below: 20 }',
};

/** The keys that tell the kind of a condition, one of which each has. */
const TELLING = [
  'stock',
  'buffer',
  'station',
  'demand',
  'from',
  'to',
  'calendar',
  'response',
  'at',
  'all',
  'any',
  'not',
];

/** The keys one of which tells what is gone by at a station. */
const WAYS = ['sees', 'above', 'below', 'chart', 'capability'];

/** What is said of readings where no key tells what of them is gone by; undefined where one does. */
export function untold(given: object, ways: string): string | undefined {
  const keys = Object.keys(given);
  const told = !keys.includes('at') || !keys.includes('of') || keys.some((key) => WAYS.includes(key));
  return told ? undefined : `expected what of the readings it goes by: ${ways}`;
}

/** What a station shows, by the key that asks for it. */
const SHOWN: Readonly<Record<string, string>> = {
  of: '{ at: GAUGE, of: FEATURE, above: 120.3 mm }',
  sees: '{ at: STATION, sees: misfits, count: 3, of-last: 20 }',
  chart: '{ at: GAUGE, of: FEATURE, chart: ewma, … }',
  capability: '{ at: GAUGE, of: FEATURE, capability: cpk, below: 1.33, of-last: 50 }',
};

/** Why a mapping is no condition, where its keys tell; undefined where it is like one. */
export function hidden(given: Readonly<Record<string, unknown>>): string | undefined {
  const keys = Object.keys(given);
  const asked = keys.find((key) => Object.hasOwn(HIDDEN, key));
  if (asked !== undefined) return HIDDEN[asked];
  if (keys.some((key) => TELLING.includes(key)))
    return untold(given, '"above" or "below", "chart" or "capability"');
  const shown = keys.find((key) => Object.hasOwn(SHOWN, key));
  if (shown !== undefined) return `"at" is missing: expected the station where that is seen, ${SHOWN[shown]}`;
  const first = keys[0];
  const known = `expected one of ${TELLING.join(', ')}`;
  if (first === undefined) return known;
  const near = suggestion(first, TELLING);
  return `a condition has no key "${first}"${near.includes('did you mean') ? near : ''}; ${known}`;
}
