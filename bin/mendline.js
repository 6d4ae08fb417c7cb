#!/usr/bin/env node
import { main } from '../.build/cli/main.js';

// A reader that has seen enough (`mendline ... | head`) closes the pipe: that is no fault.
process.stdout.on('error', (error) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await main(process.argv.slice(2));
