import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { builtOnce } from './built-once.ts';
import { fillFromKept } from './kept-builds.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const PAGE = join(root, 'packages/page');
const SITE = { name: 'site', steps: ['page', 'page-single'], own: 'packages/page/dist/site' };

/** The folder with the page and, beside it, the single-file page, built from the sources of this moment as they are shipped. */
export function builtPage(): Promise<string> {
  return builtOnce('page', (folder) =>
    fillFromKept(root, SITE, folder, async () => {
      const { build } = await import('vite');
      for (const mode of ['production', 'single'])
        await build({ root: PAGE, mode, logLevel: 'error', build: { outDir: folder, emptyOutDir: false } });
    }),
  );
}
