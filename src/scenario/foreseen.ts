import type { Law } from '../kernel/distributions/index.ts';
import type { DisturbanceSpec } from './disturbances.ts';
import type { Scenario } from './scenario.ts';
import type { StationSpec } from './stations.ts';
import type { StockSpec } from './stocks.ts';

/**
 * Whether it is ended as it begins, which is all that a fix could end, or what would not come, or would come spoilt, was
 * ordered ahead. The others go on as they are: nobody ends them.
 */
const AVERTED: { readonly [Kind in DisturbanceSpec['disturbs']]: boolean } = {
  setting: true,
  feature: true,
  gauge: true,
  marks: true,
  reader: true,
  speed: true,
  supplier: true,
  lot: true,
  station: false,
  health: false,
  crew: false,
  conveyor: false,
  demand: false,
};

/** All that a law of sizes may give lies from `least` to `most`; a normal law has no bounds. */
function keepsWithin(law: Law, least: number, most: number): boolean {
  const keeps = (...values: readonly number[]) => values.every((value) => value >= least && value <= most);
  switch (law.distribution) {
    case 'constant':
      return keeps(law.value);
    case 'uniform':
    case 'triangular':
      return keeps(law.low, law.high);
    case 'empirical':
      return keeps(...law.values);
    default:
      return false;
  }
}

const narrows = (spread: Law | undefined) => spread !== undefined && keepsWithin(spread, 0, 1);

/** Whether it can only help, so that nobody would end it: it makes a station faster, or a spread smaller. */
function onlyHelps(it: DisturbanceSpec): boolean {
  switch (it.disturbs) {
    case 'speed':
      return keepsWithin(it.to, 1, Number.POSITIVE_INFINITY);
    case 'feature':
      return it.by === undefined && narrows(it.spread);
    case 'gauge':
      return it.bias === undefined && narrows(it.spread);
    default:
      return false;
  }
}

/** Whether a disturbance is nothing to who foresees it. */
export const isAverted = (it: DisturbanceSpec): boolean => AVERTED[it.disturbs] && !onlyHelps(it);

/** Settings that drift by themselves are fixed all the time, since a fix sets a drift back. */
function undrifting(station: StationSpec): StationSpec {
  if (station.does !== 'form' || !station.settings?.some(({ drift }) => drift !== undefined)) return station;
  return { ...station, settings: station.settings.map((setting) => ({ ...setting, drift: undefined })) };
}

/** Deliveries that random outages hold up were ordered ahead, which comes to the same as if there were no outages. */
function neverOut(stock: StockSpec): StockSpec {
  const suppliers = stock.suppliers?.map((supplier) => ({ ...supplier, outages: undefined }));
  return { ...stock, outages: undefined, ...(suppliers && { suppliers }) };
}

/**
 * The scenario as it is to who knows all that will happen to it, and acts on it in no time and at no cost. What is random
 * has streams by purpose, so all that is left meets the same luck.
 */
export function foreseen(scenario: Scenario): Scenario {
  return {
    ...scenario,
    disturbances: scenario.disturbances.filter((it) => !isAverted(it)),
    stations: scenario.stations.map(undrifting),
    stocks: scenario.stocks.map(neverOut),
  };
}
