// Builds the page once before all tests that open it in a browser.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';

const PAGE = fileURLToPath(new URL('../../packages/page', import.meta.url));

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder with the built page and, beside it, the single-file page. */
    pageFolder: string;
  }
}

/** Builds both kinds of page, as they are shipped, into a folder that goes when the tests are done. */
export default async function setup(project: TestProject): Promise<() => void> {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-page-'));
  // A test runner's own name for its surroundings would build it for development.
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  for (const mode of ['production', 'single'])
    await build({ root: PAGE, mode, logLevel: 'error', build: { outDir: folder, emptyOutDir: false } });
  process.env.NODE_ENV = before;
  project.provide('pageFolder', folder);
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
