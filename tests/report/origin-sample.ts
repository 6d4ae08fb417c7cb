import type { Origin } from '../../src/report/origin.ts';

/** Made up, with a supplement whose name would end a comment. */
export const ORIGIN: Origin = {
  scenario: { file: 'a.yaml', sha256: '0'.repeat(64) },
  supplements: [{ file: 'odd\n--> name_1.yaml', sha256: '1'.repeat(64) }],
  modules: [],
  version: '0.1.0',
  command: ['compare', 'a.yaml', '--only', 'hold back'],
  seeds: '1 to 30',
};
