#!/usr/bin/env node
import { main } from '../dist/index.js';

// A command that ends well on an interrupt listens for it itself; any other stops here. Files are renamed into place when
// whole, so none is left half written.
process.on('SIGINT', () => {
  if (process.listenerCount('SIGINT') > 1) return;
  process.stderr.write('\nfielded: interrupted. Files written so far are whole.\n');
  process.exit(130);
});

process.exitCode = await main(process.argv.slice(2));
