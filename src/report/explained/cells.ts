import type { Compared } from '../../experiment/judge.ts';
import { decimalsFor, fixed } from '../format.ts';

/** One predicted value beside the simulated one, every cell as it is written. */
export interface ExplainedCells {
  readonly label: string;
  readonly predicted: string;
  readonly simulated: string;
  readonly interval: string;
  /** An asterisk where the two differ. */
  readonly mark: string;
}

/** More decimals than this are noise: a tenth of a micrometre, a ten-thousandth of a per cent. */
const MOST_DECIMALS = 4;
/** Decimals where nothing says how sure a value is. */
const UNSURE_DECIMALS = 3;

/** Decimals that show how sure the simulated value is, and something of a small predicted one. */
function decimalsOf(factor: number, { predicted, simulated }: Compared): number {
  const half =
    simulated?.lower == null || simulated.upper === null
      ? 0
      : (factor * (simulated.upper - simulated.lower)) / 2;
  const size = Math.abs(factor * (predicted ?? 0));
  const wanted = [half, size < 1 ? size : 0].filter((value) => value > 1e-9).map(decimalsFor);
  if (half <= 1e-9) wanted.push(UNSURE_DECIMALS);
  return Math.min(MOST_DECIMALS, Math.max(0, ...wanted));
}

/** @param factor from the value's own unit to the one shown, such as 100 for a share shown in % */
export function explainedCells(label: string, compared: Compared, factor = 1): ExplainedCells {
  const { predicted, simulated, differs } = compared;
  const decimals = decimalsOf(factor, compared);
  const text = (value: number) => fixed(value * factor, decimals);
  return {
    label,
    predicted: predicted === null ? 'unknown' : text(predicted),
    simulated: simulated ? text(simulated.value) : 'none',
    interval:
      simulated?.lower == null || simulated.upper === null
        ? 'no interval'
        : `${text(simulated.lower)} to ${text(simulated.upper)}`,
    mark: differs ? '*' : '',
  };
}
