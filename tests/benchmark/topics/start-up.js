// How long the command takes to say what it can do, and how much of that is Node itself.
import { COMMAND, scratch } from '../common/files.js';
import { heading, row } from '../common/table.js';
import { inTurns, median, program, spread } from '../common/timing.js';

const ROUNDS = 9;

export async function startUp() {
  heading('Start-up, whole process');
  const nothing = scratch('nothing.js', '');
  const found = await inTurns(ROUNDS, {
    'mendline --help': async () => (await program(process.execPath, [COMMAND, '--help'])).seconds,
    'node with nothing to do': async () => (await program(process.execPath, [nothing])).seconds,
  });
  for (const [name, times] of Object.entries(found)) {
    row(name, median(times) * 1000, 'ms', { note: spread(times) });
  }
}
