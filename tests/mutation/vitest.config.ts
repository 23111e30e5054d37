// One thread that keeps what it has loaded; the files in a given order.
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { BUILT_PACKAGES, builtPackages } from '../support/built-packages.ts';
import { plantFaults } from './plant.ts';

const folder = process.env.FAULTS_FOLDER!;
const read = (name: string) => JSON.parse(readFileSync(join(folder, name), 'utf8'));
const order = read('order.json') as string[];
const placeOf = ({ moduleId }: TestSpecification) => order.indexOf(relative(process.cwd(), moduleId));

class InOrder extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return [...files].sort((one, other) => placeOf(one) - placeOf(other));
  }
}

export default defineConfig({
  root: process.cwd(),
  plugins: [builtPackages([plantFaults(process.cwd(), read('faults.json'))])],
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    include: order,
    runner: 'tests/mutation/runner.ts',
    globalSetup: ['tests/support/built-once.ts'],
    server: { deps: { external: [BUILT_PACKAGES] } },
    isolate: false,
    maxWorkers: 1,
    testTimeout: 600_000,
    sequence: { sequencer: InOrder },
  },
});
