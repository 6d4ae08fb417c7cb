import type { DisturbanceSpec } from './disturbances.ts';
import type { Scenario } from './scenario.ts';
import type { StationSpec } from './stations.ts';
import type { StockSpec } from './stocks.ts';

/**
 * Whether it does nothing to who foresees it: it is ended as it begins (all that a fix could end), or what would not come,
 * or would come spoilt, was ordered ahead. The others go on as they are: nobody ends them.
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

export const isAverted = ({ disturbs }: Pick<DisturbanceSpec, 'disturbs'>): boolean => AVERTED[disturbs];

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
