// What the first test that needs it builds from the sources, once for all test files of a run.
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { inject } from 'vitest';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where tests build; gone when all are done. */
    buildFolder: string;
  }
}

export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-built-'));
  project.provide('buildFolder', folder);
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}

/** The folder of that name, filled by whoever asks first; the others wait for it. Where it cannot be, all fail. */
export async function builtOnce(name: string, fill: (folder: string) => Promise<void>): Promise<string> {
  const folder = join(inject('buildFolder'), name);
  const done = `${folder}.done`;
  const failed = `${folder}.failed`;
  if (isFirst(folder)) {
    // A test runner's own name for its surroundings would build for development.
    const before = process.env.NODE_ENV;
    process.env.NODE_ENV = 'production';
    try {
      await fill(folder);
      writeFileSync(done, '');
    } catch (error) {
      writeFileSync(failed, '');
      throw error;
    } finally {
      process.env.NODE_ENV = before;
    }
  }
  while (!existsSync(done)) {
    if (existsSync(failed)) throw new Error(`${name} could not be built: see the first test that failed`);
    await wait(50);
  }
  return folder;
}

function isFirst(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch {
    return false;
  }
}
