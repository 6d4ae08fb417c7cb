import { compare, type Row } from '../../../../src/experiment/comparison.ts';
import type { MeasureKey } from '../../../../src/line/measures.ts';
import type { Outcome } from '../../../../src/line/outcome.ts';
import { parseScenario } from '../../../../src/scenario/parse.ts';
import type { Scenario } from '../../../../src/scenario/scenario.ts';
import { erlangLoss } from '../../../../src/statistics/inventory.ts';
import { jackknifeRatio } from '../../../../src/statistics/jackknife-ratio.ts';
import { meanInterval } from '../../../../src/statistics/mean-interval.ts';
import { poissonUpTo } from '../../../../src/statistics/poisson.ts';
import { wilsonProportion } from '../../../../src/statistics/proportion-interval.ts';
import { quantileInterval } from '../../../../src/statistics/quantile-interval.ts';
import { ratioOfMeans } from '../../../../src/statistics/ratio-interval.ts';
import { exponential, type Keys, s, scenarioText, series } from '../../cases/scenario-text.ts';
import { outcome, working } from '../../cases/see.ts';
import { textHash } from '../../text-hash.ts';
import { type Calibration, holds, LEVEL, times } from '../calibration.ts';
import { coverage } from '../coverage.ts';

interface OnLine extends Omit<Calibration, 'stated' | 'theory' | 'experiment'> {
  readonly theory?: number;
  readonly stated?: number;
  /** The scenario and its runs; each experiment has seeds of its own. */
  readonly text: string;
  readonly runs: number;
  readonly experiment: (outcomes: readonly Outcome[]) => boolean;
}

/** A case of simulated lines, from the text of the scenario to the interval. */
function onLine({ text, runs, experiment, theory, stated = LEVEL, ...rest }: OnLine): Calibration {
  let scenario: Scenario | null = null;
  const before = textHash(rest.id) * 1_000_000;
  return {
    ...rest,
    ...{ stated, theory: theory ?? null },
    experiment: (number) => {
      scenario ??= parseScenario(text, `${rest.id}.yaml`);
      const known = scenario;
      return experiment(times(runs, (i) => outcome(known, before + number * runs + i + 1)));
    },
  };
}

/** What the comparison says of the only policy there is. */
function rowOf(outcomes: readonly Outcome[], key: MeasureKey): Row {
  const { measures } = compare([outcomes[0]!.policy], outcomes);
  return measures.find(({ measure }) => measure.key === key)!.rows[0]!;
}

/** A station that never starves or is blocked: what it finishes in a time is Poisson, from the very start. */
const STATION = scenarioText(0, series([{ cycle: exponential(10) }], 0))(1000);
const POISSON = 'elementary: exponential cycles one after the other end as a Poisson process';
const FINISHED = 100;
const FEW = 91;
const fewer = poissonUpTo(FEW, FINISHED);
const good = ({ counts }: Outcome): number => counts.good;

/** The smallest number that is not exceeded with chance 0.9. */
const NINTH = times(2 * FINISHED, (k) => k).find((k) => poissonUpTo(k, FINISHED) >= 0.9)!;

const station: readonly Calibration[] = [
  onLine({
    id: 'line: throughput of a station',
    what: 't interval of the mean throughput of one exponential station of 10 s, 10 runs of 1000 s without warm-up',
    ...{ source: POISSON, exact: '360 /h', claim: 'covers', text: STATION, runs: 10 },
    experiment: (outcomes) => holds(rowOf(outcomes, 'throughput_per_h').estimate, 360),
  }),
  onLine({
    id: 'line: proportion of runs',
    what: `Wilson interval of the proportion of runs of that station that finish ${FEW} parts or fewer, 50 runs`,
    ...{ source: `${POISSON}; coverage by the binomial law`, exact: String(Number(fewer.toPrecision(6))) },
    ...{ claim: 'covers', theory: coverage(wilsonProportion, 50, fewer), text: STATION, runs: 50 },
    experiment: (outcomes) =>
      holds(wilsonProportion(outcomes.filter((of) => good(of) <= FEW).length, 50, LEVEL), fewer),
  }),
  onLine({
    id: 'line: quantile of runs',
    what: 'interval by order statistics of the 0.9 quantile of what that station finishes, 60 runs; whole numbers tie',
    ...{ source: POISSON, exact: `${NINTH} parts`, claim: 'at least', text: STATION, runs: 60 },
    experiment: (outcomes) => holds(quantileInterval(outcomes.map(good), 0.9, LEVEL), NINTH),
  }),
];

const HUNT = 'G. C. Hunt (1956), Operations Research 4, 674-683 (citation from memory)';
const pair = (places: number) =>
  scenarioText(100, series([{ cycle: exponential(1) }, { cycle: exponential(1) }], places));

const throughput = onLine({
  id: 'line: throughput of a pair',
  what: 't interval of the mean throughput of two exponential stations of 1 s without places, 10 runs of 1000 s',
  ...{ source: HUNT, exact: '2400 /h', claim: 'covers', text: pair(0)(1000), runs: 10 },
  experiment: (outcomes) => holds(rowOf(outcomes, 'throughput_per_h').estimate, 2400),
});

/** M/M/1 at load 0.5: after 200 s, 17 relaxation times of 1/(1 - sqrt(0.5))^2 = 11.7 s, nothing of the empty start is left. */
const QUEUE = scenarioText(200, {
  stations: {
    entrance: { does: 'arrive', every: exponential(2), to: 'server' },
    server: { does: 'work', buffer: 'unlimited', cycle: exponential(1), to: 'good' },
  },
})(2000);
const MM1 = 'A. K. Erlang (1909); any queueing text';

const queue: readonly Calibration[] = [
  onLine({
    id: 'line: number in M/M/1',
    what: 't interval of the mean number in M/M/1 at load 0.5, service of 1 s, 20 runs of 2000 s after 200 s',
    ...{ source: MM1, exact: '1', claim: 'covers', text: QUEUE, runs: 20 },
    experiment: (outcomes) => holds(rowOf(outcomes, 'work_in_progress_parts').estimate, 1),
  }),
  onLine({
    id: 'line: utilisation of M/M/1',
    what: 't interval of the share of time that its server works, 10 such runs',
    ...{ source: MM1, exact: '0.5', claim: 'covers', text: QUEUE, runs: 10 },
    experiment: (outcomes) => holds(meanInterval(outcomes.map(working('server')), LEVEL), 0.5),
  }),
];

/** One for one ordering of 5 pieces, load 5, lost sales: what is lost is Erlang's share. The start is gone after 12 lead times. */
const STOCK = scenarioText(60, {
  stock: { mate: { 'on-hand': 5, 'up-to': 5, 'lead-time': exponential(5) } satisfies Keys },
  stations: {
    demand: { does: 'arrive', every: exponential(1), to: 'serving' },
    serving: {
      ...{ does: 'assemble', buffer: 'unlimited', takes: ['mate'], cycle: s(0), fits: [], misfit: 'scrap' },
      ...{ 'without-mates': 'scrap', to: 'good' },
    },
  },
})(400);
const LOST = erlangLoss(5, 5);
const ERLANG = 'A. K. Erlang (1917); for stock W. Karush (1957), S. A. Smith (1977)';

const lost = (id: string, what: string, interval: typeof jackknifeRatio): Calibration =>
  onLine({
    id: `line: share lost, ${id}`,
    what: `${what} of the share of demand lost, a stock of 5 ordered one for one, load 5, 20 runs of 400 s after 60 s`,
    ...{ source: ERLANG, exact: String(Number(LOST.toPrecision(6))), claim: 'covers', text: STOCK, runs: 20 },
    experiment: (outcomes) =>
      holds(
        interval(
          outcomes.map(({ counts }) => counts.scrapped),
          outcomes.map(({ counts }) => counts.scrapped + counts.good),
          LEVEL,
        ),
        LOST,
      ),
  });

const NAMES = ['first', 'second', 'third'];
const SEEDS = 10;

/** Policies that all do the same, each with luck of its own: whatever the comparison calls better or worse is not. */
const family = onLine({
  id: 'line: comparison of equal policies',
  what: `any of ${NAMES.length} equal policies called better or worse by any measure, ${SEEDS} seeds, two exponential stations with 3 places, runs of 500 s`,
  source: 'nothing differs; C. E. Bonferroni (1936)',
  ...{ exact: 'no difference', claim: 'at most', stated: 1 - LEVEL },
  ...{ text: pair(3)(500), runs: NAMES.length * SEEDS },
  experiment: (outcomes) => {
    const relabelled = outcomes.map(
      (of, i): Outcome => ({
        ...of,
        policy: NAMES[i % NAMES.length]!,
        seed: Math.floor(i / NAMES.length) + 1,
      }),
    );
    return compare(NAMES, relabelled).measures.some(({ rows }) =>
      rows.some(({ verdict }) => verdict === 'better' || verdict === 'worse'),
    );
  },
});

/** Simulated lines whose answers are known, through the whole chain. */
export const LINES: readonly Calibration[] = [
  ...station,
  throughput,
  ...queue,
  lost('jackknife', 'jackknife interval', jackknifeRatio),
  lost('Fieller', "Fieller's interval", ratioOfMeans),
  family,
];
