import { describe, expect, it } from 'vitest';
import { causeRates } from '../../src/experiment/cause-rates.ts';
import type { Causes } from '../../src/line/causes.ts';
import type { Outcome } from '../../src/line/outcome.ts';
import { causesJson } from '../../src/report/causes-json.ts';
import { causesSection } from '../../src/report/causes-page.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { outcome } from './fake.ts';

const stations = [
  { name: 'gauging', does: 'gauge' },
  {
    name: 'assembly',
    does: 'assemble',
    fits: [
      { hole: 'bore', shaft: 'pin.width' },
      { hole: 'slot', shaft: 'lid.tab' },
    ],
  },
] as unknown as Scenario['stations'];

const ran = (policy: string, seed: number, started: number, causes: Causes): Outcome => {
  const made = outcome(policy, seed);
  return { ...made, counts: { ...made.counts, started, turnedAway: 0 }, causes };
};
const offLimits = (parts: number) => ({ station: 'gauging', cause: 'off-limits', parts }) as const;
const loose = (parts: number) => ({ station: 'assembly', cause: 'loose', parts }) as const;

const OUTCOMES = [
  ran('a', 1, 100, { scrapped: [offLimits(2), loose(1)], misfits: [] }),
  ran('a', 2, 300, {
    scrapped: [offLimits(6)],
    misfits: [{ station: 'assembly', pair: 1, tight: 0, loose: 4 }],
  }),
  ran('b', 1, 200, { scrapped: [], misfits: [{ station: 'assembly', pair: 1, tight: 5, loose: 0 }] }),
];
const found = causeRates({ stations }, ['a', 'b'], OUTCOMES);

describe('causes', () => {
  it('are added up over the runs, and held against all parts that these started', () => {
    expect(found.scrapped.map(({ station, cause, rows }) => [station, cause, ...rows])).toEqual([
      [
        'gauging',
        'off-limits',
        { policy: 'a', parts: 8, perThousand: 20 },
        { policy: 'b', parts: 0, perThousand: 0 },
      ],
      [
        'assembly',
        'loose',
        { policy: 'a', parts: 1, perThousand: 2.5 },
        { policy: 'b', parts: 0, perThousand: 0 },
      ],
    ]);
    expect(found.misfits).toEqual([
      {
        ...{ station: 'assembly', hole: 'slot', shaft: 'lid.tab' },
        rows: [
          { policy: 'a', tight: 0, loose: 10 },
          { policy: 'b', tight: 25, loose: 0 },
        ],
      },
    ]);
  });

  it('stand in data, policy by policy', () => {
    const { scrap_causes, misfit_pairs } = causesJson(found);
    expect(scrap_causes).toHaveLength(4);
    expect(scrap_causes[0]).toEqual({
      ...{ policy: 'a', station: 'gauging', cause: 'off-limits' },
      ...{ parts: 8, parts_per_1000_started: 20 },
    });
    expect(misfit_pairs[1]).toEqual({
      ...{ policy: 'b', station: 'assembly', hole: 'slot', shaft: 'lid.tab' },
      ...{ tight_per_1000_started: 25, loose_per_1000_started: 0 },
    });
  });

  it('are shown as bars and as a table that adds them up', () => {
    const html = causesSection(found);
    expect(html).toContain(
      'aria-label="Scrapped of 1000 parts started under a: gauging: off limits 20.0; assembly: too loose 2.5."',
    );
    expect(html).toContain('<th scope="row">all causes</th><td>22.5</td><td>0.0</td>');
    expect(html).toContain(
      '<th scope="row">assembly: slot on lid.tab, too tight</th><td>0.0</td><td>25.0</td>',
    );
  });

  it('are left out where nothing was lost, and names are escaped', () => {
    expect(causesSection({ scrapped: [], misfits: [] })).toBe('');
    const { scrapped } = causeRates(
      { stations },
      ['<script>'],
      [ran('<script>', 1, 9, { scrapped: [loose(1)], misfits: [] })],
    );
    expect(causesSection({ scrapped, misfits: [] })).not.toContain('<script>');
  });
});
