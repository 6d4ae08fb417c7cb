#!/usr/bin/env node
import { listen, listenNoMore } from '../.build/cli/interrupt.js';

listen();

// A reader that has seen enough (`mendline ... | head`) closes the pipe: that is no fault.
process.stdout.on('error', (error) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

const { main } = await import('../.build/cli/main.js');
process.exitCode = await main(process.argv.slice(2));
listenNoMore();
