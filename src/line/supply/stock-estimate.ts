import { type Law, meanOf, varianceOf } from '../../kernel/distributions/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { StationSpec } from '../../scenario/stations.ts';
import type { StockSpec } from '../../scenario/stocks.ts';
import {
  baseStockFill,
  erlangDelay,
  erlangLoss,
  normalLotFill,
  poissonLotFill,
} from '../../statistics/inventory.ts';
import type { IdealLine } from '../ideal.ts';
import { meanCycle } from '../mean-cycle.ts';
import { ruleOf } from './rule.ts';

/** What a closed form says of a stock before any run, and what it takes the demand for. */
export interface StockEstimate {
  readonly stock: string;
  /** Pieces a second that the ideal line wants. */
  readonly demand: number;
  /** Of these, those that repairs, set-ups and maintenance want, as if all machines worked all the time. */
  readonly failures: number;
  /** Share of the pieces wanted that are on hand; null where no closed form fits the rule. */
  readonly fill: number | null;
  /**
   * `poisson`: pieces are wanted at random, and what is short is waited for and ordered at once; `normal`: the same, with
   * normal demand over a lead time; `waiting`: pieces are wanted at random, lead times are exponential, and what is short
   * is waited for, but ordered when it is taken; `lost`: pieces are wanted at random, and what finds none goes without.
   */
  readonly assumes: 'poisson' | 'normal' | 'waiting' | 'lost' | null;
}

type Fit = Pick<StockEstimate, 'fill' | 'assumes'>;
const NONE: Fit = { fill: null, assumes: null };

/** Pieces of the stock that a station wants for each part that passes through it; 0 where it takes none. */
function wanted(spec: StationSpec, stock: string): number {
  if (spec.does === 'form') return spec.takes === stock ? 1 / spec.perSheet : 0;
  if (spec.does === 'work') return spec.takes === stock ? 1 : 0;
  return spec.does === 'assemble' && spec.takes.includes(stock) ? 1 : 0;
}

/** Repairs, set-ups and maintenance a second that want a piece of the stock, as if the machines of the station worked all the time. */
function failures(spec: StationSpec, stock: string, scenario: Scenario): number {
  const { breakdowns, setUps, maintenance, machines } = spec;
  let perSecond = 0;
  for (const { spare, every } of breakdowns) if (spare === stock) perSecond += machines / meanOf(every);
  for (const { spare, cycles, every } of [...setUps, ...maintenance]) {
    if (spare !== stock) continue;
    perSecond += machines / (every ? meanOf(every) : cycles! * meanCycle(spec, scenario).worked);
  }
  return perSecond;
}

const isConstant = ({ distribution }: Law): boolean => distribution === 'constant';

/** Whether the stock has only what the closed forms know: one supplier that delivers what is ordered, when it is due. */
function isPlain(spec: StockSpec): boolean {
  const { review, suppliers, delivers, incoming, outages, shelfLife, oneOrderAtATime } = spec;
  const more = [review, suppliers, delivers, incoming, outages, shelfLife];
  return more.every((one) => one === undefined) && !oneOrderAtATime;
}

function fitOf(spec: StockSpec, demand: number, lost: boolean): Fit {
  const rule = ruleOf(spec);
  const { leadTime } = spec;
  if (!rule || !leadTime || !isPlain(spec) || !(demand > 0 && Number.isFinite(demand))) return NONE;
  if (spec.inSequence && !isConstant(leadTime)) return NONE;
  const during = demand * meanOf(leadTime);
  // Pieces are wanted one by one, so the position is at the reorder point itself when an order is placed.
  const order = rule.quantity(rule.orderAt);
  if (during === 0) return NONE;
  if (lost) {
    if (order > 1) return NONE;
    return { fill: 1 - erlangLoss(during, rule.orderAt + 1), assumes: 'lost' };
  }
  if (order === 1 && !rule.backorders)
    return { fill: 1 - erlangDelay(during, rule.orderAt + 1), assumes: 'waiting' };
  // One for one the law of the lead time does not matter, as long as orders may overtake each other (C. Palm, 1938).
  if (order === 1) return { fill: baseStockFill(rule.orderAt + 1, during), assumes: 'poisson' };
  if (isConstant(leadTime)) return { fill: poissonLotFill(rule.orderAt, order, during), assumes: 'poisson' };
  const sd = Math.sqrt(during + demand ** 2 * varianceOf(leadTime));
  return { fill: normalLotFill(rule.orderAt, order, { mean: during, sd }), assumes: 'normal' };
}

/** A first estimate of each limited stock, by the flows of the ideal line. */
export function stockEstimates(scenario: Scenario, ideal: IdealLine): StockEstimate[] {
  const { stocks, stations } = scenario;
  return stocks
    .filter(({ unlimited }) => !unlimited)
    .map((spec) => {
      const takers = stations.filter((station) => wanted(station, spec.name) > 0);
      const failing = stations.reduce((sum, station) => sum + failures(station, spec.name, scenario), 0);
      const demand = stations.reduce((sum, station, i) => {
        const pieces = wanted(station, spec.name);
        return pieces > 0 ? sum + pieces * ideal.stations[i]!.flow : sum;
      }, failing);
      const losing = takers.filter((at) => at.does === 'assemble' && at.withoutMates === 'scrap').length;
      const mixed = losing > 0 && (losing < takers.length || failing > 0);
      const fit = mixed ? NONE : fitOf(spec, demand, losing > 0);
      return { stock: spec.name, demand, failures: failing, ...fit };
    });
}
