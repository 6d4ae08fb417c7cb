// Two workers against one on whole commands: an experiment of long runs, and the demo comparison of many short ones.
import { COMMAND, DEMO, REFERENCE } from '../common/files.js';
import { heading, remark, row } from '../common/table.js';
import { inTurns, median, program, spread } from '../common/timing.js';

const ROUNDS = 2;

async function timed(words, workers) {
  const { seconds } = await program(process.execPath, [
    COMMAND,
    ...words,
    '--json',
    '--workers',
    `${workers}`,
  ]);
  return seconds;
}

/** @param least the figure to reach, where there is one */
async function measure(what, words, least) {
  heading(`Workers: ${what}, whole process`);
  const one = 'one worker';
  const two = 'two workers';
  const side = 'two processes of one worker, side by side';
  const found = await inTurns(ROUNDS, {
    [one]: () => timed(words, 1),
    [two]: () => timed(words, 2),
    [side]: async () => Math.max(...(await Promise.all([timed(words, 1), timed(words, 1)]))),
  });
  for (const [name, times] of Object.entries(found)) row(name, median(times), 's', { note: spread(times) });
  row('two workers over one', median(found[one]) / median(found[two]), 'times', least ? { least } : {});
  row(
    'what the machine gives to independent processes',
    (2 * median(found[one])) / median(found[side]),
    'times',
  );
}

export async function workers() {
  await measure('600 runs of the reference line', ['run', REFERENCE, '--seeds', '600'], 1.85);
  await measure('the demo comparison with 200 seeds', ['compare', DEMO, '--seeds', '200']);
  remark(
    'The last ratio of each is the ceiling: what cores share (clock, cache, other work) keeps it below 2. With one',
  );
  remark('worker the second core already compiles and collects garbage, of which short runs make more.');
}
