#!/usr/bin/env node
import { statSync } from 'node:fs';

/** When a file was written, ms; 0 where there is none. */
const writtenAt = (path) => statSync(new URL(path, import.meta.url), { throwIfNoEntry: false })?.mtimeMs ?? 0;

// The bundle starts in half the time. In a working copy that was compiled since it was made, what was compiled runs: there the
// packages stand among the modules at its root, and elsewhere none of these files is.
const compiled = ['core', 'geometry', 'render', 'exchange'].map((name) => `../../../node_modules/@fielded/${name}`);
const lastCompiled = Math.max(...['..', ...compiled].map((folder) => writtenAt(`${folder}/dist/.tsbuildinfo`)));
const bundled = writtenAt('../bundle/index.js');
const { main } = await import(bundled > 0 && bundled >= lastCompiled ? '../bundle/index.js' : '../dist/index.js');

// A command that ends well on an interrupt listens for it itself; any other stops here. Files are renamed into place when
// whole, so none is left half written.
process.on('SIGINT', () => {
  if (process.listenerCount('SIGINT') > 1) return;
  process.stderr.write('\nfielded: interrupted. Files written so far are whole.\n');
  process.exit(130);
});

process.exitCode = await main(process.argv.slice(2));
