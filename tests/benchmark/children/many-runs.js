// ARGS: runs the command in this process and tells the most memory that the process held. What it prints is let go.
import { main } from '../../../.build/cli/main.js';

const say = process.stdout.write.bind(process.stdout);
process.stdout.write = () => true;
const code = await main(process.argv.slice(2));
if (code !== 0) throw new Error(`it ended with ${code}`);
// maxRSS is in kilobytes.
say(JSON.stringify({ bytes: process.resourceUsage().maxRSS * 1024 }));
