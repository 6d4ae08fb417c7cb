import type { PolicySpec, Scenario } from '../../scenario/scenario.ts';
import { type Drifting, drifting, only } from './drifting-line.ts';
import { mustBeUndisturbed, mustHaveOnly } from './plain.ts';
import { must, type Theory } from './theory.ts';

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

/** Whether every part is gauged, or by which weight readings retune; neither where all is left alone. */
function answered({ name, responses }: PolicySpec): { inspected: boolean; weight: number | null } {
  if (responses.length === 0) return { inspected: false, weight: null };
  const response = only(responses, `response of "${name}"`);
  if (response.do === 'inspect') {
    mustHaveOnly(['name', 'do', 'at', 'every', 'offLimits'], response, `"${name}"`);
    const { every, offLimits = 'scrap' } = response;
    must(
      every === 1 && offLimits === 'scrap',
      `"${name}" is to gauge every part and scrap what is off limits`,
    );
    return { inspected: true, weight: null };
  }
  must(response.do === 'retune' && response.rule !== 'step', 'nothing but an EWMA is to retune');
  mustHaveOnly(['name', 'do', 'setting', 'by', 'rule', 'weight'], response, `"${name}"`);
  return { inspected: false, weight: response.weight ?? 1 };
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
    mustBeUndisturbed(scenario, policy, ['inspect', 'retune']);
    const line = drifting(scenario);
    const { inspected, weight } = answered(scenario.policies.find(({ name }) => name === policy)!);
    const { off, gauged } = weight === null ? untended(line, scenario, inspected) : retuned(line, weight);
    if (inspected) return { 'scrap rate': off, 'fit rate': 1 };
    return { 'scrap rate': off, 'fit rate': (1 - off) / (1 - gauged / line.every) };
  },
};
