// What eight more bought-in mates, ordered as the demo's frames are, cost the demo line: runs of both by turns.
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { child, DEMO, scratch } from '../common/files.js';
import { heading, row } from '../common/table.js';
import { inTurns, median, spread } from '../common/timing.js';

const MORE = Array.from({ length: 8 }, (_, i) => `clip ${i + 1}`);
const SEEDS = 10;
const ROUNDS = 7;

function tenStockLine() {
  const scenario = parse(readFileSync(DEMO, 'utf8'));
  const { features, correlations, ...clip } = scenario.stock.frame;
  for (const name of MORE) scenario.stock[name] = { ...clip };
  scenario.stations.assembly.takes.push(...MORE);
  return scratch('ten-stocks.yaml', stringify(scenario, { aliasDuplicateObjects: false }));
}

/** Time per event of all policies together, one process each time. */
async function perEvent(file) {
  const runs = Object.values(await child('events', file, '-', SEEDS, 2)).flat();
  const sum = (key) => runs.reduce((total, run) => total + run[key], 0);
  return sum('seconds') / sum('events');
}

export async function tenStocks() {
  heading('Ten stocks on the demo line, one core');
  const file = tenStockLine();
  const found = await inTurns(ROUNDS, { two: () => perEvent(DEMO), ten: () => perEvent(file) });
  const ratios = found.ten.map((ten, round) => ten / found.two[round]);
  row('time an event, ten stocks over two', median(ratios), 'x', { most: 1.1, note: spread(ratios) });
}
