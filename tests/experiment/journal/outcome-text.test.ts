import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outcomeText, readOutcome } from '../../../src/experiment/journal/outcome-text.ts';
import { simulate } from '../../../src/experiment/simulate.ts';
import type { Outcome } from '../../../src/line/outcome.ts';
import { parseScenario } from '../../../src/scenario/parse.ts';
import { shipped } from '../../cli/command.ts';

const again = (outcome: Outcome) => readOutcome(outcomeText(outcome));
const scenarios = readdirSync(shipped('')).filter(
  (name) => name.endsWith('.yaml') && name !== 'knotted.yaml',
);

describe('an outcome in a journal', () => {
  it.each(scenarios)('is what the run gave, key for key and bit for bit: %s', (name) => {
    const whole = parseScenario(readFileSync(shipped(name), 'utf8'), name);
    const { warmUp, length } = whole.run;
    const scenario = { ...whole, run: { ...whole.run, warmUp: warmUp / 10, length: length / 10 } };
    for (const { name: policy } of scenario.policies) {
      const outcome = simulate(scenario, policy, 1, true);
      // Strict: undefined is not the same as missing, nor -0 as 0, nor an array as a typed one.
      expect(again(outcome)).toStrictEqual(outcome);
      // The order of keys shows in reports.
      expect(JSON.stringify(again(outcome))).toBe(JSON.stringify(outcome));
    }
  });

  it('keeps every number there is', () => {
    const numbers = fc.array(fc.double());
    fc.assert(
      fc.property(numbers, fc.array(fc.integer({ min: 0, max: 2 ** 32 - 1 })), (values, good) => {
        const outcome = {
          measures: Object.fromEntries([...values, -0, NaN, Infinity, -Infinity].map((v, i) => [`m${i}`, v])),
          course: { good: Uint32Array.from(good), episodes: [] },
        } as unknown as Outcome;
        expect(again(outcome)).toStrictEqual(outcome);
      }),
    );
  });

  it('keeps names that mean something elsewhere', () => {
    const outcome = JSON.parse(
      '{"policy":"NaN","stockOutShares":{"$":1,"__proto__":0.5,"10":0,"2":1,"constructor":null}}',
    ) as Outcome;
    expect(again(outcome)).toStrictEqual(outcome);
    expect(outcomeText(again(outcome))).toBe(outcomeText(outcome));
  });
});
