import type { DisturbanceSpec, Disturbing } from '../disturbances.ts';
import { isOrdered } from '../supply/suppliers-of.ts';
import { nameOf, unitsOf } from '../units.ts';
import type { Checker } from './checker.ts';

type Check<Kind extends DisturbanceSpec['disturbs']> = (
  check: Checker,
  it: Disturbing<Kind>,
  path: readonly string[],
) => void;

const setting: Check<'setting'> = (check, it, path) => {
  const setting = check.settings.get(it.setting);
  if (!check.known([...path, 'setting'], it.setting, check.names.settings, 'setting of a forming station'))
    return;
  if (setting && setting.dimension !== it.by.dimension) {
    check.say(
      [...path, 'by'],
      `"${it.setting}" is ${nameOf(setting.dimension)}, so expected a change in its units (${unitsOf(setting.dimension).join(', ')})`,
    );
  }
};

/** What is delivered, or one of its suppliers. */
function deliveries(
  check: Checker,
  it: Disturbing<'supplier' | 'lot'>,
  path: readonly string[],
  why: string,
) {
  check.known([...path, 'stock'], it.stock, check.names.stock, 'stock');
  const stock = check.stock(it.stock);
  if (stock && !isOrdered(stock)) check.say([...path, 'stock'], `"${it.stock}" is never ordered, so ${why}`);
  if (stock && it.supplier !== undefined) {
    const suppliers = (stock.suppliers ?? []).map(({ name }) => name);
    if (suppliers.length === 0)
      check.say([...path, 'supplier'], `"${it.stock}" has only one supplier; leave the name out`);
    else check.known([...path, 'supplier'], it.supplier, suppliers, `supplier of "${it.stock}"`);
  }
  return stock;
}

const supplier: Check<'supplier'> = (check, it, path) => {
  deliveries(check, it, path, 'its supplier cannot fail it');
};

const lot: Check<'lot'> = (check, it, path) => {
  const stock = deliveries(check, it, path, 'no lot of it comes that could be bad');
  if (!stock || it.feature === undefined) return;
  const known = [
    ...(stock.features ?? []).map(({ name }) => name),
    ...(stock.thickness ? ['thickness'] : []),
  ];
  if (known.length === 0) {
    const remedy = 'give the stock "features" or a "thickness", or take out "feature" and "by"';
    check.say([...path, 'feature'], `"${it.stock}" has no dimensions that could be off; ${remedy}`);
  } else check.known([...path, 'feature'], it.feature, known, `feature of "${it.stock}"`);
};

const marks: Check<'marks'> = (check, it, path) => check.station([...path, 'station'], it.station, ['mark']);
const stands = (check: Checker, it: Disturbing<'station' | 'speed'>, path: readonly string[]) =>
  check.station([...path, 'station'], it.station, []);

const feature: Check<'feature'> = (check, it, path) => {
  const [mate, own] = it.feature.split('.');
  if (own !== undefined && check.names.stock.includes(mate!)) {
    const message = `"${mate}" is bought, so its lots are disturbed: { disturbs: lot, stock: ${mate}, feature: ${own}, ... }`;
    check.say([...path, 'feature'], message);
    return;
  }
  if (!check.known([...path, 'feature'], it.feature, check.names.features, 'feature of the part')) return;
  if (it.spread !== undefined && check.feature(it.feature)?.ownSd === 0)
    check.say([...path, 'spread'], `"${it.feature}" has no variation of its own; give it "own-sd"`);
};

const gauge: Check<'gauge'> = (check, it, path) => {
  check.station([...path, 'station'], it.station, ['gauge']);
  const station = check.stations.get(it.station);
  if (station?.does !== 'gauge') return;
  const { measures } = station;
  const named = measures.filter(({ name }) => it.feature === undefined || name === it.feature);
  if (it.feature !== undefined) {
    const known = measures.map(({ name }) => name);
    check.known([...path, 'feature'], it.feature, known, `feature that "${it.station}" measures`);
  } else if (named.length === 0)
    check.say([...path, 'station'], `"${it.station}" measures no feature that it could read wrong`);
  const exact = named.find(({ repeatability }) => repeatability === 0);
  if (it.spread !== undefined && exact) {
    const message = `"${it.station}" reads "${exact.name}" without spread; give it "repeatability" there`;
    check.say([...path, 'spread'], message);
  }
};

const reader: Check<'reader'> = (check, it, path) => {
  check.station([...path, 'station'], it.station, ['gauge', 'assemble']);
  const station = check.stations.get(it.station);
  if ((station?.does === 'gauge' || station?.does === 'assemble') && !station.reader)
    check.say([...path, 'station'], `"${it.station}" has no reader; give it "reader"`);
};

const health: Check<'health'> = (check, it, path) => {
  check.station([...path, 'station'], it.station, []);
  const station = check.stations.get(it.station);
  if (!station) return;
  const known = station.breakdowns.map(({ name }) => name);
  if (known.length === 0)
    check.say(
      [...path, 'station'],
      `"${it.station}" never breaks down; give it "breakdowns", or disturb its speed`,
    );
  else if (it.breakdown !== undefined)
    check.known([...path, 'breakdown'], it.breakdown, known, `way in which "${it.station}" breaks down`);
};

const crew: Check<'crew'> = (check, it, path) => {
  if (!check.known([...path, 'crew'], it.crew, check.names.crew, 'crew')) return;
  const number = check.raw.crew.find(({ name }) => name === it.crew)?.number ?? Number.POSITIVE_INFINITY;
  if (it.away > number)
    check.say([...path, 'away'], `"${it.crew}" are only ${number}; expected ${number} or fewer`);
};

const conveyor: Check<'conveyor'> = (check, it, path) => {
  check.station([...path, 'station'], it.station, []);
  const station = check.stations.get(it.station);
  if (!station || ('buffer' in station && (station.buffer?.transit ?? 0) > 0)) return;
  const remedy = 'write its "buffer" as { places, transit }, or disturb the station';
  check.say([...path, 'station'], `no conveyor leads to "${it.station}"; ${remedy}`);
};

const demand: Check<'demand'> = (check, _, path) => {
  if (check.names.given(['demand'])) return;
  const message =
    'there are no orders to disturb; give "demand", or disturb the speed of a station where parts arrive';
  check.say([...path, 'disturbs'], message);
};

const checks: { readonly [Kind in DisturbanceSpec['disturbs']]: Check<Kind> } = {
  ...{ setting, supplier, lot, marks, station: stands, speed: stands, feature },
  ...{ gauge, reader, health, crew, conveyor, demand },
};

/** Whether what a disturbance hits is there, and what it counts. */
export function checkDisturbance(check: Checker, it: DisturbanceSpec): void {
  const path = ['disturbances', it.name];
  // Each disturbance meets the check of its own kind, which the type checker cannot follow.
  checks[it.disturbs](check, it as never, path);
  if (it.after?.of !== undefined) check.station([...path, 'after', 'of'], it.after.of, []);
}
