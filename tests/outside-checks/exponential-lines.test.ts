import { describe, it } from 'vitest';
import { expectMean } from './by-simulation.ts';
import { EXPONENTIAL_LINES } from './cases/exponential-lines.ts';
import { checkCases } from './check-cases.ts';

checkCases('lines that do not fail', EXPONENTIAL_LINES);

describe('the bowl', { timeout: 60_000 }, () => {
  // L08: F. S. Hillier and R. W. Boling (1966), Journal of Industrial Engineering 17, 651-658 (citation from memory):
  // a middle station that is faster at the same total work raises throughput from 0.564103 to 0.566643. The runs
  // share their seeds, and a part's times scale with the station's mean, so the small gain is the mean of paired
  // differences: far sharper than either rate, though 15 % of a gain of half a percent is all it has to be.
  it('a faster middle station beats equal stations by the published half percent', () => {
    const rates = (id: string) => {
      const { run } = EXPONENTIAL_LINES.find((it) => it.id === id)!;
      return Array.from({ length: 30 }, (_, i) => run(144_000, i + 1)[0]!);
    };
    const equal = rates('L08 1/1/1');
    expectMean(
      rates('L08 1.05/0.9/1.05').map((rate, i) => rate - equal[i]!),
      0.566643 - 22 / 39,
      0.1,
    );
  });
});
