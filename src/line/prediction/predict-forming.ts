import type { Scenario } from '../../scenario/scenario.ts';
import { shareBelow } from '../../statistics/normal.ts';
import { normalMean } from '../../statistics/normal-mean.ts';
import { type Deviation, deviationsOf, driftTimes, type Form, sdOf } from './deviations.ts';

/** What of a forming station's parts should be flawed, as shares of all; null where that is not asked for. */
export interface FormingPrediction {
  readonly incomplete: number | null;
  readonly webbed: number | null;
  readonly thin: number | null;
  /** Mean wall of a part: mean and standard deviation over the parts, mm. */
  readonly wall: { readonly mean: number; readonly sd: number } | null;
}

const STEP = 0.25;
const STILL: Deviation = { name: '', parts: [], offset: 0, perSecond: 0 };

/** Between which deviations from the target parts form well; all where there is no window. */
function windowOf({ window, settings = [] }: Form): { lower: number; upper: number } {
  const target = settings.find(({ name }) => name === window?.setting)?.target.value ?? 0;
  return {
    lower: (window?.from?.value ?? Number.NEGATIVE_INFINITY) - target,
    upper: (window?.to?.value ?? Number.POSITIVE_INFINITY) - target,
  };
}

/** Means over all parts of what is seen at a deviation of the setting that the window is for. */
class OverSetting {
  private readonly middles: readonly number[];
  private readonly sd: number;
  private readonly kinks: readonly number[];
  private readonly step: number;

  /** @param step in the unit of the setting, over which what is seen is smooth */
  constructor(deviation: Deviation, times: readonly number[], kinks: readonly number[], step: number) {
    this.middles = times.map((time) => deviation.offset + deviation.perSecond * time);
    this.sd = sdOf(deviation);
    this.kinks = kinks;
    this.step = this.sd > 0 ? Math.min(STEP, Math.max(1e-3, (STEP * step) / this.sd)) : STEP;
  }

  mean(seen: (deviation: number) => number): number {
    const { middles, sd, kinks, step } = this;
    const each = middles.map((middle) =>
      sd === 0
        ? seen(middle)
        : normalMean(
            (z) => seen(middle + sd * z),
            kinks.map((kink) => (kink - middle) / sd),
            step,
          ),
    );
    return each.reduce((sum, value) => sum + value, 0) / middles.length;
  }

  below(limit: number): number {
    const { middles, sd } = this;
    return middles.reduce((sum, middle) => sum + shareBelow(limit, middle, sd), 0) / middles.length;
  }

  above(limit: number): number {
    const { middles, sd } = this;
    return middles.reduce((sum, middle) => sum + shareBelow(-limit, -middle, sd), 0) / middles.length;
  }
}

/** A part has one flaw at most, that of the window first. Machines count as warm, and a drift as spread over the run. */
export function predictForming(spec: Form, scenario: Scenario): FormingPrediction {
  const { window, wall } = spec;
  const deviations = deviationsOf(spec, scenario);
  const setting = deviations.find(({ name }) => name === window?.setting) ?? STILL;
  const times = setting.perSecond === 0 ? [0] : driftTimes(scenario);
  const { lower, upper } = windowOf(spec);
  const sheet = scenario.stocks.find(({ name }) => name === spec.takes)?.thickness;
  const sheetSd = Math.hypot(sheet?.lotSd ?? 0, sheet?.ownSd ?? 0);
  const thinning = wall?.thinning?.value ?? 0;
  const smooth =
    thinning > 0 && sheetSd > 0 ? sheetSd / (sheet!.nominal * thinning) : Number.POSITIVE_INFINITY;
  // Here the wall of a sheet of nominal thickness is the thinnest allowed.
  const thinnest =
    wall && sheet && thinning > 0 ? (1 - (wall.least * wall.drawRatio) / sheet.nominal) / thinning : 0;
  const all = new OverSetting(setting, times, [lower, upper, 0, thinnest], smooth);
  const flaws = {
    incomplete: window?.from ? all.below(lower) : null,
    webbed: window?.to ? all.above(upper) : null,
  };
  if (!wall || !sheet) return { ...flaws, thin: null, wall: null };
  const left = (deviation: number) => (1 - thinning * Math.max(0, deviation)) / wall.drawRatio;
  const thinAt = (deviation: number) => {
    const [mean, sd] = [sheet.nominal * left(deviation), Math.abs(sheetSd * left(deviation))];
    return shareBelow(wall.least, mean, sd);
  };
  const mean = all.mean((deviation) => sheet.nominal * left(deviation));
  const square = all.mean((deviation) => (sheet.nominal ** 2 + sheetSd ** 2) * left(deviation) ** 2);
  return {
    ...flaws,
    thin: all.mean((at) => (at < lower || at > upper ? 0 : thinAt(at))),
    wall: { mean, sd: Math.sqrt(Math.max(0, square - mean ** 2)) },
  };
}
