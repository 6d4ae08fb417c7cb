// What a policy costs whose condition never holds: the demo line under "carry on" and under one response by each kind of
// condition, by turns in one process. The events are the same but for those that conditions on time plan.
import { readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { child, DEMO, scratch } from '../common/files.js';
import { heading, row } from '../common/table.js';
import { median, spread } from '../common/timing.js';

const NEVER = {
  'on time': { from: '15.9 h', to: '15.95 h' },
  'on a stock': { stock: 'sheet', below: 1 },
  'on a buffer': { buffer: 'gauging', above: 900 },
  'on a state': { station: 'forming', is: 'down', for: '15 h' },
  'on readings': { at: 'gauging', of: 'rim', above: '125 mm' },
  'on sights': { at: 'assembly', sees: 'misfits', count: 25, 'of-last': 25 },
};
const SEEDS = 10;
const ROUNDS = 7;

function idleLine() {
  const scenario = parse(readFileSync(DEMO, 'utf8'));
  // What runs short or fills up would have the response act.
  scenario.stock.sheet['on-hand'] = 100_000;
  scenario.stations.gauging.buffer = 1000;
  // Only rework feeds it.
  delete scenario.stations.bench;
  const response = (when) => ({ do: 'slow', station: 'trimming', to: '50 %', when, lasts: '1 s' });
  const idle = Object.entries(NEVER).map(([name, when]) => [name, [response(when)]]);
  scenario.policies = { 'carry on': [], ...Object.fromEntries(idle) };
  return scratch('idle-policy.yaml', stringify(scenario, { aliasDuplicateObjects: false }));
}

export async function idlePolicy() {
  heading('A policy whose condition never holds, on the demo line, one core');
  const { 'carry on': base, ...found } = await child('events', idleLine(), '-', SEEDS, ROUNDS);
  for (const [name, runs] of Object.entries(found)) {
    const ratios = runs.map(({ seconds }, round) => seconds / base[round].seconds);
    row(`time a run, condition ${name}`, median(ratios), 'x', { most: 1.03, note: spread(ratios) });
  }
}
