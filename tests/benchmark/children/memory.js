// FILE PARTS: runs at least so many good parts through a line and tells the most memory that the process held.
import { simulate } from '../../../.build/experiment/simulate.js';
import { load } from '../common/load.js';

const [file, wanted] = [process.argv[2], Number(process.argv[3])];
const good = (length) => {
  const scenario = load(file, length);
  return simulate(scenario, scenario.policies[0].name, 1).counts.good;
};
// A short run tells the rate; 2 % more, as it is a rough one.
const pilot = 100_000;
const parts = good(Math.ceil((1.02 * pilot * wanted) / good(pilot)));
if (parts < wanted) throw new Error(`${parts} parts instead of ${wanted} went through`);
// maxRSS is in kilobytes.
console.log(JSON.stringify({ parts, bytes: process.resourceUsage().maxRSS * 1024 }));
