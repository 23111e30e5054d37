import { configDefaults, mergeConfig } from 'vitest/config';
import all from './vitest.config.ts';

/**
 * Tests that open browsers and other programs, pack packages, kill processes, try many random cases or go through every output
 * of every command: they take most of the time.
 */
const SLOW = [
  'tests/page/**/*.test.ts',
  'tests/packaging/**/*.test.ts',
  'tests/exchange/{docx,trace}.test.ts',
  'tests/cli/{nothing-lost,hostile-size,quote,completion,every-word,printed-commands}.test.ts',
  'tests/core/{match,read-bounds}.test.ts',
  'tests/render/{crossing,renderers,print-scale,pdf,draw-command,layout,layout-sheets,every-word,scripts}.test.ts',
  'tests/properties/**/*.test.ts',
  'tests/reference/**/*.test.ts',
  'tests/regressions/{fuzz,quotes-and-lists}.test.ts',
];

export default mergeConfig(all, { test: { exclude: [...configDefaults.exclude, ...SLOW] } });
