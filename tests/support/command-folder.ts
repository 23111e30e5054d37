// A folder for the command as it is built from its sources by the first test that starts it as a process.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where `builtCommand` builds. */
    commandFolder: string;
  }
}

export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-command-'));
  project.provide('commandFolder', folder);
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
