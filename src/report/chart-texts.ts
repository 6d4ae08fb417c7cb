import type { Scenario } from '../scenario/scenario.ts';
import { type ChartWatch, isChart } from '../scenario/watches.ts';
import { runLength } from '../statistics/run-length/run-length.ts';

/** What theory says of a chart that a response of a policy watches. */
interface ChartFacts {
  readonly policy: string;
  readonly station: string;
  readonly watch: ChartWatch;
  /** Readings to a signal, on average, while all is well and after a shift of one sigma; null where theory has no answer. */
  readonly falsely: number | null;
  readonly shifted: number | null;
}

/** Where a chart looks for shifts downwards alone, the shift is one downwards. */
const shiftOf = (watch: ChartWatch): number => (watch.chart === 'cusum' && watch.side === 'down' ? -1 : 1);

/** Every chart of the policies, in the order of the file. */
function chartsOf({ policies }: Pick<Scenario, 'policies'>): ChartFacts[] {
  return policies.flatMap(({ name, responses }) =>
    responses.flatMap((response) => {
      if (response.do !== 'stop-and-fix' || !isChart(response.watch)) return [];
      const { station, watch } = response;
      const falsely = runLength(watch, 0);
      return [{ policy: name, station, watch, falsely, shifted: runLength(watch, shiftOf(watch)) }];
    }),
  );
}

/** A number of readings to three digits, or as far as theory was followed. */
function lengthText(readings: number | null): string {
  if (readings === null) return 'more readings than can be told';
  const rounded = Number(readings.toPrecision(3));
  return `${rounded < 1e6 ? rounded : readings.toExponential(1).replace('e+', 'e')} readings`;
}

const NAMES = { shewhart: 'Shewhart', cusum: 'CUSUM', ewma: 'EWMA' } as const;

/** How often each chart of the policies signals by theory, in words. */
export function chartTexts(scenario: Pick<Scenario, 'policies'>): string[] {
  return chartsOf(scenario).map(({ policy, station, watch, falsely, shifted }) => {
    const chart = `${NAMES[watch.chart]} chart of "${watch.of}" at "${watch.at}"`;
    return (
      `${policy}: ${chart}, stopping "${station}": signals falsely after ${lengthText(falsely)} on average, ` +
      `and after ${lengthText(shifted)} once the mean is off by 1 sigma`
    );
  });
}

/** The charts of one policy as data. */
export function chartsJson(scenario: Scenario, policy: string): object[] {
  return chartsOf({ policies: scenario.policies.filter(({ name }) => name === policy) }).map(
    ({ station, watch, falsely, shifted }) => ({
      station,
      at: watch.at,
      of: watch.of,
      chart: watch.chart,
      readings_to_false_signal: falsely,
      readings_to_signal_of_1_sigma: shifted,
    }),
  );
}
