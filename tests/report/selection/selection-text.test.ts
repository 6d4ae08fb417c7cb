import { describe, expect, it } from 'vitest';
import { widthOf } from '../../../src/report/columns.ts';
import { selectionText } from '../../../src/report/selection/selection-text.ts';
import { besideOf } from '../../../src/report/selection/selection-words.ts';
import { sampleSelection } from './sample.ts';

const OPTIONS = { title: 'A cell', colour: false, width: 80 };
const text = (...given: Parameters<typeof sampleSelection>) =>
  selectionText(sampleSelection(...given), OPTIONS);
const flat = (...given: Parameters<typeof sampleSelection>) => text(...given).replace(/\s+/g, ' ');

describe('what is printed of a choice', () => {
  it('says what is chosen, with what probability and for what lead, and when the others were left out', () => {
    const { standing } = sampleSelection();
    const told = flat();
    expect(told).toContain(`retune is chosen after ${standing.runs} runs.`);
    expect(told).toContain(
      'If the best policy leads every other by 1 good /h or more in throughput, this finds it with a probability of 95 % or more.',
    );
    for (const { runs, policy } of standing.out)
      expect(told).toContain(
        `After ${runs} runs ${policy === 0 ? 'carry <on>' : 'match'} is left out: its mean is`,
      );
    expect(told).toContain('Kim and Nelson 2001');
  });

  it('fits 80 columns', () => {
    for (const made of [text(), text({ procedure: 'two-stage' }), text({ most: 6, worth: 0.3 })])
      for (const line of made.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(80);
  });

  it('of two stages says more, with intervals that hold together', () => {
    const told = flat({ procedure: 'two-stage' });
    expect(told).toMatch(/retune is chosen after \d+ runs of each policy\./);
    expect(told).toContain(
      'what is chosen is behind the best by 1 good /h at most, with the same probability',
    );
    expect(told).toContain('to the mean of policy runs best other interval first 5 interval');
    expect(told).toContain('Clark and Yang 1986');
  });

  it('says that it is undecided, who is ahead by how much, and what it would take', () => {
    const { standing } = sampleSelection({ most: 6, worth: 0.3 });
    const told = flat({ most: 6, worth: 0.3 });
    expect(told).toContain(
      'Undecided after 6 runs of each policy that is left, the most that --at-most allowed.',
    );
    expect(told).toMatch(
      /match is ahead; .*retune is [\d.]+ behind .*Nothing is stated of who is the best\./,
    );
    expect(told).toContain(`with ${standing.needed} runs of each: --at-most ${standing.needed}.`);
    expect(flat({ most: 6, worth: 0.003 })).toMatch(/with \d+ runs of each, which are too many\./);
  });

  it('says which are the same in every run', () => {
    const told = flat({}, [20, 20, 20], 0);
    expect(told).toContain(
      'carry <on> is chosen after 5 runs, the first of those that came to the same: retune and match had exactly its mean.',
    );
  });
});

describe('the intervals to the best other', () => {
  // Nelson and Matejcik (1995), from memory: within the indifference zone about the difference, and never on the wrong side of 0.
  it.each(['higher', 'lower'] as const)(
    'reach the worth to either side and to zero, %s being better',
    (better) => {
      const selection = sampleSelection({ procedure: 'two-stage', better });
      const found = besideOf(selection);
      const best = selection.standing.best!;
      found.forEach(({ value, lower, upper }, i) => {
        const good = better === 'higher' ? value : -value;
        expect(good > 0).toBe(i === best);
        const [worst, most] = better === 'higher' ? [lower!, upper!] : [-upper!, -lower!];
        expect(worst).toBeCloseTo(Math.min(0, good - 1), 9);
        expect(most).toBeCloseTo(Math.max(0, good + 1), 9);
      });
      expect(besideOf(sampleSelection())).toEqual([]);
    },
  );
});
