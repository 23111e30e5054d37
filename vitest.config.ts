import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { BUILT_PACKAGES, builtPackages } from './tests/support/built-packages.ts';
import { LeftOut } from './tests/support/left-out.ts';
import { LongestFirst } from './tests/support/longest-first.ts';
import { scratchInMemory } from './tests/support/scratch-folder.ts';

scratchInMemory();

/**
 * What runs only a few times is not worth the slowest compiler: waiting longer for it takes a tenth off a whole run, and having it
 * put less of what is called into who calls it takes off another twentieth of what is no browser's. Later engines do not know the
 * first option, and have a compiler between.
 */
const SELDOM_COMPILED = process.versions.v8.startsWith('11.')
  ? ['--interrupt-budget=1000000', '--max-inlined-bytecode-size-cumulative=100']
  : [];

export default defineConfig({
  plugins: [builtPackages()],
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/support/built-once.ts'],
    testTimeout: 30_000,
    isolate: false,
    sequence: { sequencer: LongestFirst },
    reporters: ['default', new LeftOut()],
    server: { deps: { external: [BUILT_PACKAGES] } },
    // One more than there are processors: who waits for a browser or another program leaves one idle.
    maxWorkers: availableParallelism() + 1,
    // Room for what lives only briefly: a quarter of the time went into clearing up after random cases.
    execArgv: ['--max-semi-space-size=64', ...SELDOM_COMPILED],
  },
});
