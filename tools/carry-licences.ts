import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

/** Where the licences of a build are gathered and written. */
export interface LicenceBook {
  /** Notes the libraries whose code the build, or a worker of it, takes in. */
  readonly note: () => Plugin;
  /** Writes what was noted, each licence once, into LICENSES.txt beside the build. */
  readonly write: () => Plugin;
}

/** The licences of one build; `also` are files of licences for what is no library, such as letters, each with what it is for. */
export function keepLicences(also: readonly (readonly [name: string, file: string])[] = []): LicenceBook {
  const folders = new Set<string>();
  const note = (ids: Iterable<string>) => {
    for (const id of ids) {
      const file = id.replace(/^\0/, '').replace(/\?.*$/, '');
      if (/[\\/]node_modules[\\/]/.test(file) && existsSync(file)) folders.add(packageFolder(file));
    }
  };
  return {
    note: () => ({
      name: 'note-licences',
      apply: 'build',
      generateBundle(_, bundle) {
        for (const chunk of Object.values(bundle)) if (chunk.type === 'chunk') note(chunk.moduleIds);
      },
    }),
    write: () => ({
      name: 'write-licences',
      apply: 'build',
      generateBundle() {
        const texts = [...folders].sort().map(licenceText);
        const others = also.map(([name, file]) => `${name}\n\n${readFileSync(file, 'utf8').trim()}`);
        this.emitFile({ type: 'asset', fileName: 'LICENSES.txt', source: `${[...texts, ...others].join('\n\n\n')}\n` });
      },
    }),
  };
}

/** The folder of the package that a file belongs to: the nearest above it whose package.json has a version. */
function packageFolder(file: string): string {
  for (let folder = dirname(file); folder !== dirname(folder); folder = dirname(folder)) {
    const manifest = join(folder, 'package.json');
    if (existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).version) return folder;
  }
  throw new RangeError(`${file} belongs to no package`);
}

/** A library's licence as it came with it. One that wants its source to be had, such as the MPL, says where that is. */
function licenceText(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = ['LICENSE', 'LICENSE.md', 'LICENSE.txt', 'LICENCE', 'license', 'license.md', 'LICENSE-MIT.txt']
    .map((one) => join(folder, one))
    .find(existsSync);
  const source = /MPL|GPL|EPL/.test(String(license))
    ? `\nIts source: https://registry.npmjs.org/${name}/-/${String(name).replace(/^@[^/]+\//, '')}-${version}.tgz\n`
    : '';
  if (file) return `${name} ${version}\n${source}\n${readFileSync(file, 'utf8').trim()}`;
  if (typeof license !== 'string')
    throw new RangeError(`${name} has neither a licence file nor a field that names one`);
  return `${name} ${version}\n${source}\nLicence: ${license}. No text of it came with the library.`;
}
