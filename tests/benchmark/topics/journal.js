// What it costs to note each finished run of a comparison, and the memory that an experiment of 10,000 runs takes.
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { child, DEMO, scratch } from '../common/files.js';
import { heading, remark, row } from '../common/table.js';
import { median, spread } from '../common/timing.js';

const ROUNDS = 5;
const SEEDS = 8;

/** The demo cut short, so that many runs of its size take no longer than needed. */
function shortDemo() {
  const scenario = parse(readFileSync(DEMO, 'utf8'));
  scenario.run = { ...scenario.run, 'warm-up': '10 min', length: '1 h' };
  return {
    path: scratch('short-demo.yaml', stringify(scenario, { aliasDuplicateObjects: false })),
    // Each policy has a run and a twin under each seed.
    seeds: Math.ceil(10_000 / (2 * Object.keys(scenario.policies).length)),
  };
}

export async function journal() {
  heading('Journal: the demo comparison with twins, one worker');
  const found = await child('journal', DEMO, SEEDS, ROUNDS, scratch('journalled'));
  const shares = found.with.map(({ adding, seconds }) => (100 * adding) / seconds);
  row('main thread at work on the journal, of the whole time', median(shares), '%', {
    most: 2,
    note: spread(shares),
  });
  const ratios = found.with.map(({ seconds }, i) => seconds / found.without[i].seconds);
  row('time with a journal over time without', median(ratios), 'x', { note: spread(ratios) });
  remark(
    'The worker goes on meanwhile, so the first figure is the most that it can cost; the second is mostly noise.',
  );

  heading('Memory: a comparison of 10,000 runs, the demo cut to an hour');
  const { path, seeds } = shortDemo();
  for (const workers of [1, 2]) {
    const { bytes } = await child(
      'many-runs',
      ...['compare', path, '--seeds', seeds, '--workers', workers],
      ...['--out', scratch(`many-runs-${workers}`)],
    );
    row(`the most that the command held, ${workers} worker${workers > 1 ? 's' : ''}`, bytes / 1e6, 'MB', {
      most: 300,
    });
  }
}
