import { meanOf } from '../../kernel/distributions/index.ts';
import type { PolicySpec, Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import { shareBetween } from '../../statistics/normal.ts';
import { must, type Theory } from './theory.ts';

/** Between which dimensions parts are good, and what makes them stray: mm and s. */
interface Drifting {
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

function drifting(scenario: Scenario): Drifting {
  const forming = found(scenario, 'form');
  const gauging = found(scenario, 'gauge');
  const assembly = found(scenario, 'assemble');
  const [feature] = scenario.parts.flatMap(({ features }) => features);
  const [setting] = forming.settings ?? [];
  const gain = setting && feature?.gains?.[setting.name]?.value;
  must(feature !== undefined && setting?.drift !== undefined && gain !== undefined, 'a setting is to drift');
  must(feature.sheetSd === 0 && feature.lotSd === 0, 'parts are to vary by themselves alone');
  const [mate] = scenario.stocks.flatMap(({ features = [] }) => features);
  const [pair] = assembly.fits;
  must(
    mate?.ownSd === 0 && pair?.least !== undefined && pair.most !== undefined,
    'mates are to be all alike',
  );
  const [lower, upper] = [mate.nominal - pair.most, mate.nominal - pair.least];
  must(
    feature.tolerance !== undefined &&
      Math.abs(upper - feature.nominal - feature.tolerance) < 1e-9 &&
      Math.abs(feature.nominal - lower - feature.tolerance) < 1e-9,
    'parts within their tolerance are to be those that fit',
  );
  const pauses = forming.setUps.reduce((sum, { takes }) => sum + constantOf(takes, 'a pause'), 0);
  const formed = constantOf(forming.cycle, 'forming');
  const { inspection } = gauging;
  must(inspection.by === 'count', 'one part in so many is to be gauged');
  return {
    within: (mean, sd) => shareBetween(lower, upper, feature.nominal + mean, sd),
    ownSd: feature.ownSd,
    perSecond: setting.drift.value * gain,
    ...{ between: formed + pauses, pause: pauses, gauging, every: inspection.every },
    ...{ forming: formed, reading: constantOf(gauging.cycle, 'gauging') },
    joining: constantOf(assembly.cycle, 'assembly'),
  };
}

/** From the loading of a part until it is judged, in the mean: at the gauge where all are read, else mostly at assembly. */
function untilJudged(line: Drifting, inspected: boolean): number {
  const { forming, reading, joining, between, pause, every, gauging } = line;
  if (!inspected) return forming + reading / every + joining;
  // A gauge that is the bottleneck has every place in front of it taken, and forming is full, too.
  return reading > between ? (gauging.buffer.places + 2) * reading - pause : forming + reading;
}

/** Shares of all parts and of those gauged that are off limits, while nothing is done about the drift. */
function untended(line: Drifting, { run }: Scenario, inspected: boolean) {
  const { within, ownSd, perSecond } = line;
  const STEPS = 2000;
  const before = untilJudged(line, inspected);
  let off = 0;
  for (let i = 0; i < STEPS; i++) {
    const at = run.warmUp - before + ((i + 0.5) / STEPS) * run.length;
    off += (1 - within(perSecond * at, ownSd)) / STEPS;
  }
  return { off, gauged: off };
}

/** The same under an EWMA controller of weight `weight`, in the long run. */
function retuned({ within, ownSd, perSecond, between, pause, reading, every }: Drifting, weight: number) {
  const perPart = perSecond * between;
  const lag = (perPart * every) / weight;
  const sd = ownSd * Math.sqrt(2 / (2 - weight));
  const late = reading - pause;
  // The first part behind a gauged one that is loaded after its reading.
  const first = late > 0 ? Math.floor(late / between) + 2 : 1;
  must(first <= every, 'a reading is to be known before the next part is gauged');
  const offAt = (parts: number) => 1 - within(lag + parts * perPart, sd);
  let off = 0;
  for (let k = 1; k <= every; k++) off += offAt(k < first ? k : k - every) / every;
  return { off, gauged: offAt(0) };
}

function retuning({ responses }: PolicySpec): number | null {
  const retune = responses.find((response) => response.do === 'retune');
  if (!retune) return null;
  must(
    responses.length === 1 && retune.rule !== 'step' && retune.meanOf === 1,
    'nothing but an EWMA is to retune',
  );
  must(
    retune.deadband === 0 && retune.gain === undefined,
    'the controller is to know the gain, without a deadband',
  );
  return retune.weight ?? 1;
}

/** A feature that a setting carries away: carried on, every part gauged, or retuned by readings. */
export const driftingFeature: Theory = {
  name: 'a drifting feature',
  says:
    'Left alone, a dimension moves by the drift, and the share off limits is that of a normal law whose mean moves: it is ' +
    'averaged over the run. Gauging sorts these parts out and makes none of them good. Under an EWMA controller of ' +
    'weight w the gauged parts lie the drift between two of them over w off their nominal, since the estimate lags, and ' +
    'the spread grows by the square root of 2 / (2 - w), since the estimate is made of readings that vary.',
  source:
    'A. Ingolfsson and E. Sachs (1993), Journal of Quality Technology 25, 271-287; E. Del Castillo (2002) (citation ' +
    'from memory)',
  values(scenario, policy) {
    const line = drifting(scenario);
    const spec = scenario.policies.find(({ name }) => name === policy)!;
    const weight = retuning(spec);
    const inspected = spec.responses.some((response) => response.do === 'inspect');
    const { off, gauged } = weight === null ? untended(line, scenario, inspected) : retuned(line, weight);
    if (inspected) return { 'scrap rate': off, 'fit rate': 1 };
    return { 'scrap rate': off, 'fit rate': (1 - off) / (1 - gauged / line.every) };
  },
};
