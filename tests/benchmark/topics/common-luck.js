// How much the variance of the difference of two policies falls because both meet the same luck: for each pair of the
// demo's policies, the variance of good assemblies under seeds of their own over that under the same seeds. Not a
// matter of speed, but a figure that the project has set itself.
import { median } from 'simple-statistics';
import { pairingOf } from '../../../.build/statistics/comparing/pairing.js';
import { child, DEMO } from '../common/files.js';
import { heading, row } from '../common/table.js';

const SEEDS = 60;

export async function commonLuck() {
  heading(`Common luck on the demo line, ${SEEDS} seeds`);
  const found = Object.entries(await child('good', DEMO, SEEDS));
  const ratios = found.flatMap(([one, a], i) =>
    found
      .slice(i + 1)
      .map(([other, b]) => ({ pair: `"${one}", "${other}"`, ratio: 1 / pairingOf(a, b).share })),
  );
  for (const { pair, ratio } of ratios) row(pair, ratio, 'x');
  row('in the median over the pairs', median(ratios.map(({ ratio }) => ratio)), 'x', { least: 5 });
}
