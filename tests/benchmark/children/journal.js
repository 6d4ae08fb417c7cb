// FILE SEEDS ROUNDS FOLDER: seconds that all policies of a scenario take with their twins, with and without a journal by turns,
// on one worker, and the share of that which the main thread was at work, s.
import { mkdirSync } from 'node:fs';
import { experimentOf } from '../../../.build/experiment/journal/experiment.js';
import { Journal } from '../../../.build/experiment/journal/journal.js';
import { planTwins } from '../../../.build/experiment/plan.js';
import { Runner } from '../../../.build/experiment/runner.js';
import { load } from '../common/load.js';

const [file, seeds, rounds, folder] = process.argv.slice(2);
mkdirSync(folder);
const scenario = load(file);
const tasks = planTwins(
  scenario.policies.map(({ name }) => name),
  Number(seeds),
);
const sources = { version: '0', scenario: file, supplements: [], modules: [] };
const experiment = experimentOf(sources, tasks);

// Adding alone is timed, too: by difference of whole times a small cost is not to be seen.
async function round(journalled) {
  const journal = journalled ? new Journal(folder, { experiment, resume: false }) : null;
  let adding = 0;
  const timed = journal && {
    finished: journal.finished,
    add(run, outcome) {
      const begun = performance.now();
      journal.add(run, outcome);
      adding += performance.now() - begun;
    },
  };
  const begun = performance.now();
  const runner = new Runner(scenario, tasks.length, { workers: 1, journal: timed });
  await runner.do(tasks);
  await runner.end();
  const seconds = (performance.now() - begun) / 1000;
  journal?.finish();
  return { seconds, adding: adding / 1000 };
}

const found = { without: [], with: [] };
for (let i = 0; i <= Number(rounds); i++)
  for (const name of Object.keys(found)) {
    const took = await round(name === 'with');
    // The first round only warms up.
    if (i > 0) found[name].push(took);
  }
console.log(JSON.stringify({ runs: tasks.length, ...found }));
