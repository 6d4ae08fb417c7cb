import { mean, sampleVariance } from 'simple-statistics';
import { dudewiczDalalConstant } from '../../../../src/statistics/selection/dudewicz-dalal.ts';
import { KimNelson } from '../../../../src/statistics/selection/kim-nelson.ts';
import { pairedTotal } from '../../../../src/statistics/selection/paired-total.ts';
import { rinottConstant, rinottTotal } from '../../../../src/statistics/selection/rinott.ts';
import { type Calibration, drawn, LEVEL, type Luck, times } from '../calibration.ts';

const WORTH = 1;
const FIRST = 10;
/** Of the first system; wide, so that whole runs add little to what is stated. */
const SPREAD = 3;

/** The place of the best of `systems`, which leads all others by just what is worth finding: the slippage configuration. */
const bestOf = (systems: number): number => Math.floor(systems / 2);

/** One run of each system; spreads differ, and `shared` is the spread of the luck they have in common. */
const runOf =
  (systems: number, shared: number, { normal }: Luck) =>
  (): number[] => {
    const luck = shared > 0 ? shared * normal() : 0;
    return times(
      systems,
      (i) => (i === bestOf(systems) ? WORTH : 0) + luck + SPREAD * (1 + i / systems) * normal(),
    );
  };

const topOf = (means: readonly number[]): number => means.indexOf(Math.max(...means));

interface Selection {
  readonly id: string;
  readonly what: string;
  readonly source: string;
  readonly systems: number;
  readonly shared: number;
  readonly theory?: number;
  /** The system chosen. */
  readonly choose: (run: () => number[], systems: number) => number;
}

const selection = ({ id, what, source, systems, shared, choose, theory }: Selection): Calibration =>
  drawn({
    id: `${id}, ${systems} systems, ${shared > 0 ? 'common luck' : 'independent'}`,
    what: `${what} chooses the best of ${systems}, which leads by ${WORTH}; ${FIRST} runs first, spreads of ${SPREAD} to ${2 * SPREAD}, ${
      shared > 0 ? 'common luck' : 'independent'
    }`,
    ...{ source, exact: 'the best', claim: 'at least' },
    ...(theory !== undefined && { theory }),
    experiment: (luck) => choose(runOf(systems, shared, luck), systems) === bestOf(systems),
  });

const kimNelson = (systems: number, shared: number): Calibration =>
  selection({
    id: 'KN',
    what: 'selection run by run',
    source: 'S.-H. Kim and B. L. Nelson (2001), ACM TOMACS 11, 251-273',
    ...{ systems, shared },
    choose: (run) => {
      const kn = new KimNelson({
        ...{ systems, better: 'higher', worth: WORTH, confidence: LEVEL },
        ...{ firstStage: FIRST, most: 1_000_000 },
      });
      while (!kn.selected) kn.add(run());
      return kn.selected.best;
    },
  });

/** Values by system of so many runs. */
const columns = (runs: readonly (readonly number[])[]): number[][] =>
  runs[0]!.map((_, system) => runs.map((own) => own[system]!));

const pairedStages = (systems: number, shared: number): Calibration =>
  selection({
    id: 'two stages, paired',
    what: 'selection in two stages by paired differences',
    source: 'G. M. Clark and W. Yang (1986), Proc. Winter Simulation Conf., 313-315 (from memory)',
    ...{ systems, shared },
    choose: (run) => {
      const first = times(FIRST, run);
      const total = pairedTotal(columns(first), LEVEL, WORTH);
      const all = [...first, ...times(total - FIRST, run)];
      return topOf(columns(all).map(mean));
    },
  });

const RINOTT = new Map([2, 5].map((systems) => [systems, rinottConstant(systems, FIRST, LEVEL)]));

const rinott = (systems: number): Calibration =>
  selection({
    id: 'Rinott',
    what: 'selection in two stages',
    source: 'Y. Rinott (1978), Comm. Stat. A 7, 799-811',
    ...{ systems, shared: 0 },
    choose: (run) => {
      const values = columns(times(FIRST, run));
      const totals = values.map((own) =>
        rinottTotal(RINOTT.get(systems)!, FIRST, sampleVariance(own), WORTH),
      );
      // All systems are drawn for, whether or not they need it, so that each keeps luck of its own.
      for (let i = FIRST; i < Math.max(...totals); i++)
        for (const [system, value] of run().entries()) if (i < totals[system]!) values[system]!.push(value);
      return topOf(values.map(mean));
    },
  });

const DUDEWICZ_DALAL = dudewiczDalalConstant(5, FIRST, LEVEL);

/**
 * A mean in which the first stage weighs w and the rest 1 - w, so that its variance is just the square of worth over h, were the
 * variance that of the first stage: w^2/n + (1 - w)^2/(N - n) = (worth/h)^2/s^2. `rest` gives as many values more as are asked for.
 */
function weightedMean(first: readonly number[], h: number, rest: (count: number) => number[]): number {
  const n = first.length;
  const asked = (WORTH / h) ** 2 / sampleVariance([...first]);
  const N = Math.max(n + 1, Math.ceil(1 / asked));
  const w = (n / N) * (1 + Math.sqrt(1 - (N / n) * (1 - (N - n) * asked)));
  return w * mean([...first]) + (1 - w) * mean(rest(N - n));
}

const dudewiczDalal: Calibration = selection({
  id: 'Dudewicz-Dalal',
  what: 'selection in two stages by weighted means (the constant; the weights are those of the paper)',
  source: 'E. J. Dudewicz and S. R. Dalal (1975), Sankhya B 37, 28-78: exact for independent normal values',
  ...{ systems: 5, shared: 0, theory: LEVEL },
  choose: (run, systems) => {
    const first = columns(times(FIRST, run));
    return topOf(
      times(systems, (system) =>
        weightedMean(first[system]!, DUDEWICZ_DALAL, (count) => times(count, () => run()[system]!)),
      ),
    );
  },
});

/** Choices of the best on the slippage configuration, on plain draws. */
export const SELECTIONS: readonly Calibration[] = [
  kimNelson(2, 0),
  kimNelson(5, 0),
  kimNelson(5, 10),
  rinott(2),
  rinott(5),
  dudewiczDalal,
  pairedStages(2, 10),
  pairedStages(5, 10),
];
