import { fileURLToPath } from 'node:url';
import { builtOnce } from './built-once.ts';

const PAGE = fileURLToPath(new URL('../../packages/page', import.meta.url));

/** The folder with the page and, beside it, the single-file page, built from the sources of this moment as they are shipped. */
export function builtPage(): Promise<string> {
  return builtOnce('page', async (folder) => {
    const { build } = await import('vite');
    for (const mode of ['production', 'single'])
      await build({ root: PAGE, mode, logLevel: 'error', build: { outDir: folder, emptyOutDir: false } });
  });
}
