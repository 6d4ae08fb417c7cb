import { meanOf } from '../../kernel/distributions/index.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import { shareBetween } from '../../statistics/normal.ts';
import { mustBePlain, mustHaveOnly } from './plain.ts';
import { must } from './theory.ts';

/** Between which dimensions parts are good, and what makes them stray: mm and s. */
export interface Drifting {
  readonly within: (mean: number, sd: number) => number;
  readonly ownSd: number;
  readonly perSecond: number;
  /** From one part to the next, as long as nothing holds forming up. */
  readonly between: number;
  /** From the end of a part to the start of the next. */
  readonly pause: number;
  readonly gauging: SpecOf<'gauge'>;
  /** Gauged is one part in so many. */
  readonly every: number;
  /** Times of one part at forming, gauging and assembly. */
  readonly forming: number;
  readonly reading: number;
  readonly joining: number;
}

const constantOf = (law: SpecOf<'gauge'>['cycle'], what: string): number => {
  must(law.distribution === 'constant', `${what} is to take a constant time`);
  return meanOf(law);
};

const found = <Kind extends 'form' | 'gauge' | 'assemble'>(
  { stations }: Scenario,
  does: Kind,
): SpecOf<Kind> => {
  const of = stations.filter((station) => station.does === does);
  must(of.length === 1 && stations.length === 3, 'expected forming, gauging and assembly, one station each');
  return of[0] as SpecOf<Kind>;
};

/** The one there is. @throws NotOfItsKind */
export function only<One>(all: readonly One[], what: string): One {
  must(all.length === 1, `expected one ${what}`);
  return all[0]!;
}

/** Material that never runs out; its features are looked at where they meet the part. */
function mustBeAtHand({ stocks }: Scenario): void {
  for (const stock of stocks) {
    must(stock.unlimited === true, `"${stock.name}" is to be unlimited`);
    mustHaveOnly(['name', 'unlimited', 'features', 'price'], stock, `"${stock.name}"`);
  }
}

/** A feature that a setting alone carries away, and the setting. */
function carried({ parts }: Scenario, { settings = [] }: SpecOf<'form'>) {
  const setting = only(settings, 'setting of forming');
  const feature = only(
    parts.flatMap(({ features }) => features),
    'feature of the part',
  );
  mustHaveOnly(['name', 'target', 'drift'], setting, `"${setting.name}"`);
  const read = ['name', 'nominal', 'tolerance', 'capability', 'limits', 'aim', 'ownSd', 'madeAt', 'gains'];
  mustHaveOnly(read, feature, `"${feature.name}"`);
  const { [setting.name]: gain, ...others } = feature.gains ?? {};
  must(setting.drift !== undefined && gain !== undefined, 'a setting is to drift');
  must(Object.keys(others).length === 0, `"${feature.name}" is to depend on "${setting.name}" alone`);
  return { setting, feature, perSecond: setting.drift.value * gain.value };
}

/** What meets the part, all alike. */
function metBy({ stocks }: Scenario, { takes, fits, misfit }: SpecOf<'assemble'>, feature: string) {
  const kind = only(takes, 'mate');
  const mate = only(stocks.find(({ name }) => name === kind)?.features ?? [], 'feature of the mate');
  mustHaveOnly(['name', 'nominal', 'limits', 'aim'], mate, `"${kind}.${mate.name}"`);
  const pair = only(fits, 'mating pair');
  must(
    pair.hole === `${kind}.${mate.name}` && pair.shaft === feature,
    `"${feature}" is to be the shaft of the mate`,
  );
  must(pair.least !== undefined && pair.most !== undefined, 'the pair is to have its clearances');
  must(misfit === 'scrap', 'what does not fit is to be scrapped');
  return { nominal: mate.nominal, least: pair.least, most: pair.most };
}

/** Room for those who come while a part is gauged, and who then go on together, so that nothing holds forming up. */
function mustKeepUp(
  { between, reading, joining }: Drifting,
  { buffer: first }: SpecOf<'gauge'>,
  { buffer: second }: SpecOf<'assemble'>,
) {
  const behind = Math.ceil(reading / between);
  must(first.transit === 0 && second.transit === 0, 'parts are to take no time between stations');
  must(Number.isFinite(first.places), 'the gauge is to have so many places in front of it');
  must(
    first.places >= behind && second.places >= behind,
    `gauging and assembly are to have ${behind} places or more`,
  );
  must(joining <= between, 'assembly is to keep up with forming');
}

/** What the formula reads of a line that it holds for. @throws NotOfItsKind */
export function drifting(scenario: Scenario): Drifting {
  const forming = found(scenario, 'form');
  const gauging = found(scenario, 'gauge');
  const assembly = found(scenario, 'assemble');
  mustBePlain(forming, gauging.name, ['takes', 'makes', 'settings', 'setUps']);
  mustBePlain(gauging, assembly.name, ['buffer', 'inspection', 'measures', 'offLimits']);
  mustBePlain(assembly, 'good', ['buffer', 'takes', 'fits', 'misfit']);
  mustBeAtHand(scenario);
  const { feature, perSecond } = carried(scenario, forming);
  const { nominal, least, most } = metBy(scenario, assembly, feature.name);
  const measure = only(gauging.measures, 'reading');
  mustHaveOnly(['name'], measure, `the reading of "${measure.name}"`);
  must(gauging.offLimits === 'scrap', 'what is read off limits is to be scrapped');
  const [lower, upper] = [nominal - most, nominal - least];
  must(
    feature.tolerance !== undefined &&
      Math.abs(upper - feature.nominal - feature.tolerance) < 1e-9 &&
      Math.abs(feature.nominal - lower - feature.tolerance) < 1e-9,
    'parts within their tolerance are to be those that fit',
  );
  for (const setUp of forming.setUps) {
    mustHaveOnly(['name', 'cycles', 'takes', 'priority'], setUp, `"${setUp.name}"`);
    must(setUp.cycles === 1, `"${setUp.name}" is to come after every cycle`);
  }
  const pauses = forming.setUps.reduce((sum, { takes }) => sum + constantOf(takes, 'a pause'), 0);
  const formed = constantOf(forming.cycle, 'forming');
  const { inspection } = gauging;
  must(inspection.by === 'count', 'one part in so many is to be gauged');
  const line: Drifting = {
    within: (mean, sd) => shareBetween(lower, upper, feature.nominal + mean, sd),
    ownSd: feature.ownSd,
    perSecond,
    ...{ between: formed + pauses, pause: pauses, gauging, every: inspection.every },
    ...{ forming: formed, reading: constantOf(gauging.cycle, 'gauging') },
    joining: constantOf(assembly.cycle, 'assembly'),
  };
  mustKeepUp(line, gauging, assembly);
  return line;
}
