// The first program in each package's README is run as printed, and prints what the README says it prints.
import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { version } = JSON.parse(readFileSync(join(root, 'packages/cli/package.json'), 'utf8'));

describe('the first program of', () => {
  it.each(['geometry', 'core', 'render', 'exchange', 'cli'])('@fielded/%s prints what its README says', (name) => {
    const readme = readFileSync(join(root, 'packages', name, 'README.md'), 'utf8');
    const program = /^```js\n([\s\S]*?)^```/m.exec(readme)![1]!;
    const says = /^prints (?:`([^`]+)`|the version)/m.exec(readme)!;
    // Beside the package, so that its own dependencies are the ones that are found.
    const file = join(root, 'packages', name, `first-program-${process.pid}.mjs`);
    writeFileSync(file, program);
    try {
      expect(execFileSync(process.execPath, [file], { encoding: 'utf8' }).trim()).toBe(says[1] ?? version);
    } finally {
      rmSync(file);
    }
  });
});
