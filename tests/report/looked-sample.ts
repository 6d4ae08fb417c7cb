import type { Looked } from '../../src/experiment/looked.ts';

/** Made up: two policies, one with a name that would be a tag. */
export function sampleLooked(): Looked {
  const counts = Array.from({ length: 72 }, (_, bin) => (bin >= 20 && bin < 40 ? 5 : 0));
  const row = (policy: string) => ({
    ...{ policy, counted: 104, counts, below: 1, above: 3, underLower: 21, overUpper: 3 },
  });
  const policies = ['carry on', '<script>'];
  return {
    seeds: 4,
    sizes: [
      {
        ...{ of: 'rim', kind: 'dimension', limits: { lower: 9.1 + 0.2, upper: 9.7 } },
        ...{ from: 8.9, width: (9.7 - 9.3) / 24, rows: policies.map(row) },
      },
    ],
    times: [3600, 7200, 10800],
    levels: [
      {
        ...{ name: 'lid', kind: 'stock' },
        rows: policies.map((policy, p) => ({ policy, means: [4, 2.25, p] })),
      },
    ],
  };
}
