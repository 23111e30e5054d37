// Makes small faults in geometry, profiles, machining, joint and knife, one at a time, in a copy of the project, and counts how
// many of them the tests of figures catch: npm run mutate -- --count 60, with
// --tests FOLDER for only some of the tests. What survives is printed by file and line, and is either a
// test that is missing or a slip that changes nothing.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { listFaults, type SmallFault } from './faults.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values } = parseArgs({
  options: { count: { type: 'string', default: '60' }, tests: { type: 'string', multiple: true } },
});
/** The tests that look at figures: those of drawings and of the command line would only say the same once more. */
const TESTS = values.tests ?? ['tests/core', 'tests/reference', 'tests/properties', 'tests/regressions'];

/** A copy whose packages find each other, and not those of the project. */
function copyProject(): string {
  const copy = mkdtempSync(join(tmpdir(), 'fielded-mutation-'));
  for (const name of ['packages', 'tests', 'docs', 'examples'])
    cpSync(join(root, name), join(copy, name), {
      recursive: true,
      filter: (path) => !/(node_modules|[\\/]dist)$/.test(path),
    });
  for (const name of [
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'tsconfig.base.json',
    'vitest.config.ts',
    'README.md',
    'DEVELOPERS.md',
  ])
    cpSync(join(root, name), join(copy, name));
  mkdirSync(join(copy, 'node_modules/@fielded'), { recursive: true });
  for (const name of readdirSync(join(root, 'node_modules')))
    if (name !== '@fielded') symlinkSync(join(root, 'node_modules', name), join(copy, 'node_modules', name));
  for (const name of readdirSync(join(copy, 'packages')))
    symlinkSync(join(copy, 'packages', name), join(copy, 'node_modules/@fielded', name));
  return copy;
}

/** Whether the tests fail. A fault that makes them run for minutes is seen too. */
function isCaught(copy: string): boolean {
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');
  const { status } = spawnSync(process.execPath, [vitest, 'run', '--bail', '1', ...TESTS], {
    cwd: copy,
    stdio: 'ignore',
    timeout: 900_000,
  });
  return status !== 0;
}

function tryFault(copy: string, { file, at, from, to }: SmallFault): boolean {
  const path = join(copy, file);
  const text = readFileSync(path, 'utf8');
  writeFileSync(path, text.slice(0, at) + to + text.slice(at + from.length));
  try {
    return isCaught(copy);
  } finally {
    writeFileSync(path, text);
  }
}

const copy = copyProject();
try {
  if (isCaught(copy)) throw new Error('The tests fail without a fault: nothing can be told from them.');
  const faults = listFaults(root, Number(values.count));
  let caught = 0;
  for (const fault of faults) {
    const seen = tryFault(copy, fault);
    if (seen) caught++;
    console.log(
      `${seen ? 'caught  ' : 'SURVIVED'}  ${fault.file}:${fault.line}  ${fault.from.trim()} -> ${fault.to.trim()}`,
    );
  }
  console.log(`${caught} of ${faults.length} caught`);
} finally {
  rmSync(copy, { recursive: true, force: true });
}
