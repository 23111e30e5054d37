import type { Reporter, TestModule, Vitest } from 'vitest/node';

/** Names the tests that were left to the long run, at the end of every other. */
export class LeftOut implements Reporter {
  #chosen = false;

  onInit({ config }: Vitest): void {
    this.#chosen = config.testNamePattern !== undefined;
  }

  onTestRunEnd(modules: readonly TestModule[]): void {
    // Who asks for tests by name knows that the others are left out.
    if (this.#chosen) return;
    const left = modules.flatMap((module) =>
      [...module.children.allTests('skipped')]
        .filter(({ options }) => options.mode === 'skip')
        .map((test) => `  ${module.relativeModuleId}  ${test.fullName}`),
    );
    if (left.length > 0) console.log(`Left to npm run test:long (${left.length}):\n${left.join('\n')}\n`);
  }
}
