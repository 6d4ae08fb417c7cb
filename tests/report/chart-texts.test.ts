import { describe, expect, it } from 'vitest';
import { chartsJson, chartTexts } from '../../src/report/chart-texts.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { changed, SOUND } from '../scenario/sample.ts';

const SIGHTS = '{ at: assembly, sees: misfits, count: 5, of-last: 25 }';
const sound = (watch: string) =>
  parseScenario(changed(SIGHTS, `{ at: gauging, of: rim, sigma: 0.07 mm, ${watch} }`), 'cell.yaml');

describe('what check says of charts', () => {
  // S06: Montgomery; J. M. Lucas and R. B. Crosier (1982): 465 readings, and 10.4 after a shift of one sigma.
  it('is how long each runs by theory', () => {
    expect(chartTexts(sound('chart: cusum, slack: 0.5, limit: 5'))).toEqual([
      'stop and fix: CUSUM chart of "rim" at "gauging", stopping "forming": signals falsely after 465 readings on average, ' +
        'and after 10.4 readings once the mean is off by 1 sigma',
    ]);
  });

  // S01: Shewhart (1931): 370.398 means without shift; S02: 4.49531 means of five after a shift of one sigma.
  it('counts readings where a point is a mean of several', () => {
    const [data] = chartsJson(sound('chart: shewhart, limit: 3, mean-of: 5'), 'stop and fix') as Record<
      string,
      number
    >[];
    expect(data!.readings_to_false_signal! / (5 * 370.398)).toBeCloseTo(1, 5);
    expect(data!.readings_to_signal_of_1_sigma! / (5 * 4.49531)).toBeCloseTo(1, 5);
  });

  // S04: D. Brook and D. A. Evans (1972): 117.596 without shift.
  it('is of a shift downwards where the chart looks for those alone', () => {
    const down = sound('chart: cusum, slack: 0.5, limit: 3, side: down');
    const up = sound('chart: cusum, slack: 0.5, limit: 3, side: up');
    expect(chartsJson(down, 'stop and fix')).toEqual(chartsJson(up, 'stop and fix'));
    expect(chartTexts(down)[0]).toContain('falsely after 118 readings');
  });

  it('is no number where there is none that rounding leaves right', () => {
    const wide = sound('chart: cusum, slack: 0.5, limit: 300');
    expect(chartTexts(wide)[0]).toContain('falsely after more readings than can be told');
    expect(chartsJson(wide, 'stop and fix')).toMatchObject([{ readings_to_false_signal: null }]);
    const far = sound('chart: shewhart, limit: 12');
    expect(chartsJson(far, 'stop and fix')).toMatchObject([{ readings_to_false_signal: null }]);
  });

  it('is nothing of a policy that watches no chart', () => {
    const plain = parseScenario(SOUND, 'cell.yaml');
    expect(chartTexts(plain)).toEqual([]);
    expect(chartsJson(plain, 'stop and fix')).toEqual([]);
  });
});
