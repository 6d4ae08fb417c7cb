// Two workers against one on the demo comparison, whole processes.
import { COMMAND, DEMO } from '../common/files.js';
import { heading, remark, row } from '../common/table.js';
import { inTurns, median, program, spread } from '../common/timing.js';

const ROUNDS = 3;
const SEEDS = 200;

const compare = async (workers) =>
  (
    await program(process.execPath, [
      COMMAND,
      'compare',
      DEMO,
      ...['--json', '--seeds', `${SEEDS}`, '--workers', `${workers}`],
    ])
  ).seconds;

export async function workers() {
  heading(`Workers: the demo comparison with ${SEEDS} seeds, whole process`);
  const one = 'one worker';
  const two = 'two workers';
  const side = 'two processes of one worker, side by side';
  const found = await inTurns(ROUNDS, {
    [one]: () => compare(1),
    [two]: () => compare(2),
    [side]: async () => Math.max(...(await Promise.all([compare(1), compare(1)]))),
  });
  for (const [name, times] of Object.entries(found)) row(name, median(times), 's', { note: spread(times) });
  const ratio = median(found[one]) / median(found[two]);
  const ceiling = (2 * median(found[one])) / median(found[side]);
  row('two workers over one', ratio, 'times', { least: 1.85 });
  row('what the machine gives to independent processes', ceiling, 'times');
  remark('The second ratio is the ceiling: what cores share (clock, cache, other work) keeps it below 2.');
}
