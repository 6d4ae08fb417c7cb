// Events per second on the demo line, one core, policies by turns in one process as a comparison runs them.
import { child, DEMO } from '../common/files.js';
import { heading, row } from '../common/table.js';
import { median, spread } from '../common/timing.js';

const SEEDS = 10;
const ROUNDS = 5;

export async function demoLine() {
  heading('Demo line, one core');
  const found = Object.entries(await child('events', DEMO, '-', SEEDS, ROUNDS));
  for (const [policy, runs] of found) {
    const rates = runs.map(({ events, seconds }) => events / seconds / 1e6);
    row(`"${policy}"`, median(rates), 'M events/s', { note: spread(rates) });
  }
  // Events of all policies over the time of all.
  const events = found.reduce((sum, [, runs]) => sum + runs[0].events, 0);
  const seconds = found.reduce((sum, [, runs]) => sum + median(runs.map((run) => run.seconds)), 0);
  row('in the mean', events / seconds / 1e6, 'M events/s', { least: 2 });
}
