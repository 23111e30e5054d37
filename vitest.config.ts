import { defineConfig } from 'vitest/config';

export default defineConfig({
  // The tests read the packages' TypeScript directly, so a stale build can never make them pass.
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: { include: ['tests/**/*.test.ts'], testTimeout: 30_000 },
});
