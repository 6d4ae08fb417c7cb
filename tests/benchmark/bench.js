// Speed of the engine and of the command, measured now on this machine. Not a test: numbers vary with the machine,
// so compare ratios within one run of it.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { simulate } from '../../.build/experiment/simulate.js';
import { parseScenario } from '../../.build/scenario/parse.js';

const root = join(import.meta.dirname, '..', '..');
const REPEATS = 5;

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

function seconds(work) {
  const begun = performance.now();
  work();
  return (performance.now() - begun) / 1000;
}

function engine(file, policy, seeds) {
  const scenario = parseScenario(readFileSync(join(root, file), 'utf8'), file);
  const rates = Array.from({ length: REPEATS + 1 }, () => {
    let events = 0;
    const time = seconds(() => {
      for (let seed = 1; seed <= seeds; seed++) {
        events += simulate(scenario, policy ?? scenario.policies[0].name, seed).events;
      }
    });
    return events / time / 1e6;
  });
  // The first round warms the compiler up.
  return median(rates.slice(1));
}

function command(...args) {
  const times = Array.from({ length: REPEATS }, () =>
    seconds(() => spawnSync(process.execPath, [join(root, 'bin/mendline.js'), ...args], { cwd: root })),
  );
  return median(times);
}

const show = (what, value, unit) => console.log(`${what.padEnd(58)}${value.toFixed(2).padStart(8)} ${unit}`);

show(
  'engine, five-station reference line, one core',
  engine('tests/benchmark/reference-line.yaml', undefined, 3),
  'M events/s',
);
show(
  'engine, demo line, "carry on", one core',
  engine('scenarios/tray-cell.yaml', 'carry on', 20),
  'M events/s',
);
show(
  'engine, demo line, "sort and match", one core',
  engine('scenarios/tray-cell.yaml', 'sort and match', 20),
  'M events/s',
);
show('mendline --help, whole process', command('--help') * 1000, 'ms');
const one = command('compare', 'scenarios/tray-cell.yaml', '--json', '--workers', '1');
const two = command('compare', 'scenarios/tray-cell.yaml', '--json', '--workers', '2');
show('mendline compare on the demo, one worker', one, 's');
show('mendline compare on the demo, two workers', two, 's');
show('one worker over two', one / two, 'times');
