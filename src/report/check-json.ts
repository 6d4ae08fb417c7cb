import { meanOf } from '../kernel/distributions/index.ts';
import type { IdealLine } from '../line/ideal.ts';
import { stockEstimates } from '../line/supply/stock-estimate.ts';
import { workingShare } from '../line/week.ts';
import { boundOf } from '../scenario/bound.ts';
import { routesOf } from '../scenario/routes.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { shiftsText } from './calendar-text.ts';
import { chartsJson } from './chart-texts.ts';
import { disturbanceTexts } from './disturbance-text.ts';
import { nominalWall } from './forming-text.ts';
import { type Joined, joinedJson } from './joined.ts';

export interface CheckSource {
  readonly scenario: Scenario;
  readonly ideal: IdealLine;
  readonly file: string;
  readonly sha256: string;
  readonly joined?: readonly Joined[];
}

/** A scenario explained as data; numbers are in the unit that their key names, and null is no value or no limit. */
export function checkJson({ scenario, ideal, file, sha256, joined = [] }: CheckSource): object {
  const { title, stations, crew, carriers, calendars, demand, policies } = scenario;
  return {
    format: 'mendline check 2',
    scenario: { file, title, sha256 },
    ...joinedJson(joined),
    ideal_rate_per_h: ideal.rate * 3600,
    bottleneck: ideal.bottleneck,
    stations: ideal.stations.map(({ station, secondsPerPart, availability, rate, flow }, i) => {
      const spec = stations[i]!;
      return {
        station,
        does: spec.does,
        machines: spec.machines,
        by: spec.to.by,
        to: routesOf(spec),
        time_per_part_s: secondsPerPart,
        availability,
        rate_per_h: rate * 3600,
        flow_per_h: flow * 3600,
        calendar: spec.calendar ?? null,
        ...(spec.does === 'form' &&
          spec.wall && { mean_wall_mm: nominalWall(spec, scenario), least_wall_mm: spec.wall.least }),
      };
    }),
    crew: crew.map(({ name, number, serves, calendar }) => ({
      name,
      number,
      serves,
      calendar: calendar ?? null,
    })),
    carriers: carriers.map(({ name, number, from, to }) => ({ name, number, from, to: to ?? null })),
    calendars: calendars.map((it) => ({
      name: it.name,
      shifts: shiftsText(it),
      working_share: workingShare(it),
    })),
    demand: demand && {
      mean_every_s: meanOf(demand.every),
      pieces: demand.pieces,
      due_after_s: demand.dueAfter,
      finished_goods: { at_start: demand.finishedGoods.atStart, most: demand.finishedGoods.most },
    },
    stocks: stockEstimates(scenario, ideal).map(({ stock, demand, failures, fill, assumes }) => {
      const { onHand, reserve } = scenario.stocks.find(({ name }) => name === stock)!;
      return {
        stock,
        on_hand: onHand!,
        ...(reserve !== undefined && { reserve }),
        demand_per_h: demand * 3600,
        failures_per_h: failures * 3600,
        fill_rate: fill,
        assumes,
      };
    }),
    disturbances: disturbanceTexts(scenario),
    cases: scenario.cases,
    ...(boundOf(policies) !== null && { bound: boundOf(policies) }),
    policies: policies.map(({ name, responses }) => ({
      name,
      responses: responses.map((response) => response.do),
      charts: chartsJson(scenario, name),
    })),
  };
}
