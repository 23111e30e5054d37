import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plugin, UserConfig, UserConfigFn } from 'vite';
import { keepLicences } from '../../tools/carry-licences.ts';
import { noteBuild } from '../../tools/note-build.ts';
import { keepOffline } from './build/keep-offline.ts';
import { singleFile } from './build/single-file.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** While it is being worked on, styles are put into the page as they change, which its own policy would not allow. */
function whileWorking(): Plugin {
  return {
    name: 'while-working',
    apply: 'serve',
    transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ''),
  };
}

/** Parts are fetched by the browser alone: none needs others before it, and each brings its own styles. */
function fetchPlainly(): Plugin {
  return {
    name: 'fetch-plainly',
    enforce: 'pre',
    load: (id) => (id === '\0vite/preload-helper.js' ? 'export const __vitePreload = (load) => load();' : null),
  };
}

/** The page as a folder of files; with `--mode single`, as one file beside them that opens from disk. */
const config: UserConfigFn = ({ mode }): UserConfig => {
  const single = mode === 'single';
  const fontLicence = fileURLToPath(import.meta.resolve('@fielded/render/fonts/OFL.txt'));
  const licences = keepLicences([['IBM Plex Sans', fontLicence]]);
  return {
    root: here('.'),
    base: './',
    publicDir: single ? false : here('public'),
    resolve: {
      // The page is built from the packages' sources, so that it is never older than they are.
      conditions: ['source', 'browser', 'module', 'import', 'default'],
    },
    plugins: [
      whileWorking(),
      fetchPlainly(),
      licences.note(),
      licences.write(),
      single ? singleFile(readFileSync(here('public/icon.svg'), 'utf8')) : keepOffline(here('public')),
      noteBuild(here('../..'), single ? 'page-single' : 'page', here('dist/site')),
    ],
    worker: { plugins: () => [licences.note()] },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: {
      outDir: here('dist/site'),
      emptyOutDir: !single,
      target: 'es2022',
      modulePreload: false,
      assetsInlineLimit: single ? Number.MAX_SAFE_INTEGER : 0,
      cssCodeSplit: !single,
      reportCompressedSize: false,
      chunkSizeWarningLimit: 4000,
      rolldownOptions: single
        ? { input: here('index.html'), output: { codeSplitting: false } }
        : {
            input: { page: here('index.html'), worker: here('src/offline/worker.ts') },
            output: {
              entryFileNames: ({ name }) => (name === 'worker' ? 'worker.js' : 'assets/[name]-[hash].js'),
              // What the first load needs comes as one file: it packs smaller than the thirty that other parts share with it.
              codeSplitting: {
                groups: [{ name: 'first', tags: ['$initial'], test: (id) => !id.endsWith('/offline/worker.ts') }],
              },
            },
          },
    },
  };
};

export default config;
