import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare, simulate } from '../../src/experiment/simulate.ts';
import { StandstillError } from '../../src/line/standstill.ts';
import { parseScenario } from '../../src/scenario/parse.ts';
import { meanInterval } from '../../src/statistics/mean-interval.ts';
import { disturbedLine } from '../disturbance/made-up.ts';
import { forgotten } from '../line/laws.ts';
import { LENGTH, WARM_UP } from '../line/made-up-line.ts';

const LINES = 400;

interface Made {
  disturbances: Record<string, { disturbs: string }>;
  policies: object;
}

/** Without stations at another speed: where that may be faster or slower foresight ends it, though faster would help. */
function without(kind: string, made: Made): void {
  made.disturbances = Object.fromEntries(
    Object.entries(made.disturbances).filter(([, { disturbs }]) => disturbs !== kind),
  );
}

describe('foresight on any line whatever under any disturbances', { timeout: 120_000 }, () => {
  // Each run checks itself, and throws if a law of every run is broken.
  it('keeps the laws of every run, runs the same way twice, and makes no less than to carry on but by chance', () => {
    const more: number[] = [];
    fc.assert(
      fc.property(disturbedLine, ({ text, seed }) => {
        const made = JSON.parse(text) as Made;
        without('speed', made);
        made.policies = { 'carry on': [], foresight: [{ do: 'foresee' }] };
        const scenario = parseScenario(JSON.stringify(made), 'any.yaml');
        try {
          const { good } = simulate(scenario, 'carry on', seed).counts;
          const bound = simulate(scenario, 'foresight', seed);
          expect(simulate(scenario, 'foresight', seed)).toEqual(bound);
          more.push((bound.counts.good - good) / Math.max(1, good, bound.counts.good));
          const line = prepare(scenario, 'foresight', seed);
          line.calendar.run(WARM_UP + LENGTH);
          expect(forgotten(line, scenario)).toEqual([]);
        } catch (error) {
          // Which lines may come to one, `any-line` looks at.
          if (!(error instanceof StandstillError)) throw error;
        }
      }),
      { numRuns: LINES, seed: 6, endOnFailure: true },
    );
    const worse = more.filter((share) => share < 0);
    const better = more.filter((share) => share > 0);
    expect(meanInterval(more, 0.99).upper).toBeGreaterThanOrEqual(0);
    expect(worse.length).toBeLessThan(better.length);
    expect(better.length).toBeGreaterThan(LINES / 20);
  });
});
