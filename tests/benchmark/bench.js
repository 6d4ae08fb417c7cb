// Speed and memory of the engine and of the command, measured now on this machine. Not a test: numbers vary with the
// machine and with what else it does, so quote ratios within one run. Writes nothing into the repository.
//
//   node tests/benchmark/bench.js [--only TOPIC]
import { parseArgs } from 'node:util';
import { commonLuck } from './topics/common-luck.js';
import { demoLine } from './topics/demo-line.js';
import { idlePolicy } from './topics/idle-policy.js';
import { journal } from './topics/journal.js';
import { memory } from './topics/memory.js';
import { pages } from './topics/pages.js';
import { playback } from './topics/playback.js';
import { referenceLine } from './topics/reference-line.js';
import { scaling } from './topics/scaling.js';
import { startUp } from './topics/start-up.js';
import { tenStocks } from './topics/ten-stocks.js';
import { workers } from './topics/workers.js';

const TOPICS = {
  'reference-line': referenceLine,
  'demo-line': demoLine,
  'ten-stocks': tenStocks,
  'common-luck': commonLuck,
  'idle-policy': idlePolicy,
  memory,
  journal,
  scaling,
  workers,
  'start-up': startUp,
  pages,
  playback,
};

function chosen() {
  const { only } = parseArgs({ options: { only: { type: 'string', multiple: true } } }).values;
  for (const name of only ?? []) {
    if (!Object.hasOwn(TOPICS, name)) {
      throw new Error(`there is no topic "${name}"; there are ${Object.keys(TOPICS).join(', ')}`);
    }
  }
  return Object.entries(TOPICS).filter(([name]) => only?.includes(name) ?? true);
}

try {
  for (const [, measure] of chosen()) await measure();
} catch (error) {
  console.error(`\nbenchmark: ${error.message}`);
  process.exitCode = 1;
}
