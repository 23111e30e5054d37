import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** Writes into the page's worker what it has to keep: every file of the site, under a name that changes with any of them. */
export function keepOffline(publicFolder: string): Plugin {
  return {
    name: 'keep-offline',
    // Last of all: chunks that held nothing but a style sheet are gone by then.
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const worker = bundle['worker.js'];
        if (worker?.type !== 'chunk') return;
        const whole = readdirSync(publicFolder);
        const files = ['./', ...Object.keys(bundle).filter((name) => name.startsWith('assets/')), ...whole];
        const hash = createHash('sha256').update(worker.code);
        for (const name of Object.keys(bundle).sort()) {
          const file = bundle[name]!;
          if (name !== 'worker.js') hash.update(name).update(file.type === 'chunk' ? file.code : file.source);
        }
        for (const name of whole) hash.update(readFileSync(join(publicFolder, name)));
        worker.code = worker.code
          .replace('__VERSION__', hash.digest('hex').slice(0, 12))
          .replace('__FILES__', JSON.stringify(files).replaceAll("'", "\\'"));
      },
    },
  };
}
