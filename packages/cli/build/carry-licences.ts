import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

/** Writes the licences of the libraries whose code a build took in, each once, into LICENSES.txt beside it. */
export function carryLicences(): Plugin {
  return {
    name: 'carry-licences',
    apply: 'build',
    generateBundle(_, bundle) {
      const folders = new Set<string>();
      for (const chunk of Object.values(bundle)) {
        if (chunk.type !== 'chunk') continue;
        for (const id of chunk.moduleIds) if (/[\\/]node_modules[\\/]/.test(id)) folders.add(packageFolder(id));
      }
      const source = [...folders].sort().map(licenceText).join('\n\n');
      this.emitFile({ type: 'asset', fileName: 'LICENSES.txt', source: `${source}\n` });
    },
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

function licenceText(folder: string): string {
  const { name, version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = ['LICENSE', 'LICENSE.md', 'LICENCE', 'license'].map((one) => join(folder, one)).find(existsSync);
  if (!file) throw new RangeError(`${name} has no licence file`);
  return `${name} ${version}\n\n${readFileSync(file, 'utf8').trim()}`;
}
