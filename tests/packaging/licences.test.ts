// Whose code a build takes in is named, with its licence, and the build stops where there is none to name.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { describe, expect, it } from 'vitest';
import { keepLicences } from '../../tools/carry-licences.ts';
import { scratchFolder } from '../support/programs.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const site = join(root, 'packages/page/dist/site');
const folder = scratchFolder();

/** A library with a manifest and perhaps a licence; the path of its only file. */
function library(name: string, manifest: object, licence?: string): string {
  const at = join(folder, 'node_modules', name);
  mkdirSync(at, { recursive: true });
  writeFileSync(join(at, 'package.json'), JSON.stringify({ name, version: '1.2.3', ...manifest }));
  writeFileSync(join(at, 'index.js'), '');
  if (licence !== undefined) writeFileSync(join(at, 'LICENSE'), licence);
  return join(at, 'index.js');
}

/** What LICENSES.txt says of a build that takes in these files. */
function written(...files: string[]): string {
  const book = keepLicences();
  let text = '';
  const run = (plugin: Plugin, bundle: object) =>
    (plugin.generateBundle as unknown as (this: object, options: null, bundle: object) => void).call(
      { emitFile: ({ source }: { source: string }) => (text = source) },
      null,
      bundle,
    );
  run(book.note(), { 'index.js': { type: 'chunk', moduleIds: files } });
  run(book.write(), {});
  return text;
}

describe('the licences of a build', () => {
  it('are each named once, with where the source of those is to be had that ask for it', () => {
    const plain = library('plain', { license: 'MIT' }, 'The MIT text');
    const shared = library('@group/shared', { license: 'MPL-2.0' }, 'The MPL text');
    expect(written(plain, `${plain}?raw`, shared)).toBe(
      '@group/shared 1.2.3\n\nIts source: https://registry.npmjs.org/@group/shared/-/shared-1.2.3.tgz\n\nThe MPL text\n\n\nplain 1.2.3\n\nThe MIT text\n',
    );
  });

  it('stop the build where a library has neither a text nor a field', () => {
    expect(() => written(library('silent', {}))).toThrow(/silent has neither a licence file nor a field/);
    expect(written(library('brief', { license: 'ISC' }))).toContain(
      'Licence: ISC. No text of it came with the library.',
    );
  });
});

describe('the page that is built', () => {
  const licences = readFileSync(join(site, 'LICENSES.txt'), 'utf8');
  const named = [...licences.matchAll(/^([@a-z][^\s]*) \d+\.\d+\.\d+$/gm)].map(([, name]) => name!);

  it('carries those of what it shows, writes and, in its worker, reads', () => {
    for (const name of [
      'preact',
      '@svgdotjs/svg.js',
      'mathjs',
      'yaml',
      'valibot',
      'pdfkit',
      'docx',
      'jpeg-js',
      'fast-png',
    ])
      expect(named).toContain(name);
    expect(licences).toContain('SIL OPEN FONT LICENSE');
  });

  it('carries them in the single file too', () => {
    const page = readFileSync(join(site, 'fielded.html'), 'utf8');
    const inside = /<template id="licences">([\s\S]*?)<\/template>/.exec(page)?.[1] ?? '';
    const text = inside.replaceAll('&lt;', '<').replaceAll('&amp;', '&');
    for (const name of named) expect(text).toContain(`${name} `);
  });
});
