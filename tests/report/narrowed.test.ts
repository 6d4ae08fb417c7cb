import { expect, it } from 'vitest';
import type { Narrowed } from '../../src/experiment/narrow.ts';
import { MEASURES } from '../../src/line/measures.ts';
import { narrowedSection } from '../../src/report/narrowed-page.ts';
import { narrowedSentences } from '../../src/report/narrowed-text.ts';

const estimate = {
  value: 21.23,
  lower: 19.23,
  upper: 23.23,
  level: 0.95,
  runs: 40,
  method: 'Stein, two stages',
};
const FOUND: Narrowed = {
  ...{
    policies: ['carry <on>', 'retune'],
    measure: MEASURES[0],
    half: 2,
    firstStage: 10,
    most: 500,
    seeds: 40,
  },
  rows: [
    { policy: 'carry <on>', needed: 40, estimate },
    { policy: 'retune', needed: 12, estimate: { ...estimate, value: 30 } },
  ],
};

it('says what is known to within which width, and by how many runs', () => {
  const told = narrowedSentences(FOUND);
  expect(told[0]).toBe(
    'To within \u00b12 good /h at 95 %, each by itself, the mean throughput is: carry <on> 21.2 and retune 30.0; by 40 runs of each policy.',
  );
  expect(told).toHaveLength(2);
  expect(narrowedSection(FOUND)).toContain('carry &lt;on&gt;');
});

it('says what is not, and what it would take', () => {
  const rows = [{ policy: 'carry on', needed: 41, estimate }, FOUND.rows[1]!];
  const told = narrowedSentences({ ...FOUND, rows });
  expect(told[1]).toBe(
    'Not narrow enough by the 40 runs that --at-most allowed: \u00b12 good /h in throughput takes 41 runs of carry on; --at-most 41 is enough.',
  );
  expect(narrowedSentences({ ...FOUND, rows: [{ ...rows[0]!, needed: 20_000 }] })[0]).toContain(
    'takes 20000 runs of carry on, which are too many.',
  );
});
