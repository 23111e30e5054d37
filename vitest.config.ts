import { availableParallelism } from 'node:os';
import { configDefaults, defineConfig } from 'vitest/config';

/** Tests that open browsers and other programs, pack packages, or kill processes: they take most of the time. */
const SLOW = [
  'tests/page/**/*.test.ts',
  'tests/packaging/**/*.test.ts',
  'tests/exchange/{docx,trace}.test.ts',
  'tests/cli/{nothing-lost,hostile-size,quote,completion}.test.ts',
  'tests/core/{match,read-bounds}.test.ts',
  'tests/render/{crossing,renderers,print-scale,pdf,draw-command,layout,layout-sheets}.test.ts',
  'tests/properties/**/*.test.ts',
  'tests/reference/**/*.test.ts',
  'tests/regressions/{fuzz,quotes-and-lists}.test.ts',
];

const shared = {
  // The tests read the packages' TypeScript directly, so a stale build can never make them pass.
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
};

export default defineConfig({
  test: {
    // One more than there are processors: who waits for a browser or another program leaves one idle.
    maxWorkers: availableParallelism() + 1,
    projects: [
      {
        ...shared,
        test: {
          name: 'quick',
          isolate: false,
          globalSetup: ['tests/support/command-folder.ts'],
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, ...SLOW],
          testTimeout: 30_000,
        },
      },
      {
        ...shared,
        test: {
          name: 'slow',
          isolate: false,
          globalSetup: ['tests/support/command-folder.ts'],
          include: SLOW.filter((pattern) => !pattern.startsWith('tests/page')),
          testTimeout: 30_000,
        },
      },
      {
        ...shared,
        test: {
          name: 'page',
          isolate: false,
          include: ['tests/page/**/*.test.ts'],
          globalSetup: ['tests/support/build-page.ts'],
          testTimeout: 30_000,
        },
      },
    ],
  },
});
