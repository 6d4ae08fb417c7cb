import { samplerOf } from '../../kernel/distributions/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { Demand } from '../demand.ts';
import { Feature } from '../features.ts';
import { Flaw } from '../flaw.ts';
import { Line } from '../line.ts';
import { refuseStandstill } from '../standstill.ts';
import { Stock } from '../stock.ts';
import { stationsInCircles } from './circles.ts';
import { correlateFeatures } from './correlate.ts';
import { addCrews } from './crews.ts';
import { equip } from './equip.ts';
import { operationOf } from './operations.ts';
import { Plan } from './plan.ts';
import { addRoutes } from './routes.ts';
import { addStation } from './stations.ts';

/** Wires up the scenario's line for one seed, undisturbed and without a policy. */
export function buildLine(scenario: Scenario, seed: number): Line {
  const line = new Line(seed);
  const { calendar, parts, streams, good, tally } = line;
  const plan = new Plan(scenario, line);
  for (const spec of scenario.stocks) line.stocks.set(spec.name, new Stock(spec, calendar, streams));
  addCrews(plan);
  for (const spec of scenario.stations) addStation(spec, plan);
  if (scenario.demand) {
    const between = samplerOf(scenario.demand.every, streams.of('demand/every'));
    line.demand = new Demand(scenario.demand, between, calendar, good, tally);
  }
  addRoutes(plan);
  const sheet = scenario.stations.find((spec) => spec.does === 'form')?.takes;
  for (const spec of scenario.parts.flatMap((part) => part.features)) {
    line.features.set(spec.name, new Feature(spec, parts, streams, line.stocks.get(sheet!) ?? null));
  }
  for (const part of scenario.parts) correlateFeatures(part, line);
  if (passesFlaws(scenario)) line.flaw = new Flaw(parts);
  for (const spec of scenario.stations) {
    const operation = operationOf(spec, plan);
    for (const machine of plan.station(spec.name).machines)
      machine.assign(operation, plan.next.get(spec.name)!);
  }
  // Only now: a breakdown by the clock may not be entered before its station can work.
  for (const spec of scenario.stations) equip(spec, plan);
  for (const { on } of line.assemblies.values()) on.mates.gather(calendar);
  const circles = stationsInCircles(scenario);
  for (const name of circles) {
    const { machines } = line.stations.get(name)!;
    for (const machine of machines) machine.onBlocked = () => refuseStandstill(machine, calendar.now);
  }
  return line;
}

/** Whether flawed parts may go on unseen. */
const passesFlaws = ({ stations }: Scenario): boolean =>
  stations.some(
    (spec) => spec.does === 'form' && (spec.window?.outside === 'pass' || spec.wall?.outside === 'pass'),
  );
