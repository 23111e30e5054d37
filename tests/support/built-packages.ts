// The packages as the tests read them: their TypeScript of this moment, turned into JavaScript file by file before the first test
// begins. Node then loads some 500 files by itself, which takes a tenth of what the test runner takes for each of its processes,
// and code that calls itself a million times does so without the runner between.
import { cpSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';
import type {} from 'vitest/config';
import type { VitestPluginContext } from 'vitest/node';

const root = fileURLToPath(new URL('../..', import.meta.url));
const PACKAGES = join(root, 'packages');

/** What runs in Node alone; of the page only few files are tested without a browser. */
const BUILT = readdirSync(PACKAGES).filter((name) => name !== 'page');

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the packages are built for this run; '' where the runner watches files. */
    builtPackages: string;
  }
}

/** The end of the name of a folder with built packages, by which the test runner leaves them to Node. */
export const BUILT_PACKAGES = /fielded-packages-\w+\/packages\//;

/**
 * Leads tests from the packages' sources to what is built of them, anew in each run, so that no stale build is tested. Where
 * the runner watches files, the sources themselves are read, since they change while it runs. `plugins` may change them as they are built.
 */
export function builtPackages(plugins: readonly Plugin[] = []): Plugin {
  let folder: string | undefined;
  return {
    name: 'fielded-built-packages',
    enforce: 'pre',
    async configureVitest({ vitest, project }: VitestPluginContext) {
      project.provide('builtPackages', '');
      if (vitest.config.watch) return;
      const made = mkdtempSync(join(tmpdir(), 'fielded-packages-'));
      vitest.onClose(() => rmSync(made, { recursive: true, force: true, maxRetries: 5 }));
      await buildInto(made, plugins);
      folder = made;
      project.provide('builtPackages', join(made, 'packages'));
    },
    async resolveId(source, importer, options) {
      if (folder === undefined) return null;
      const resolved = await this.resolve(source, importer, { ...options, skipSelf: true });
      const path = resolved && relative(PACKAGES, resolved.id);
      const [name = '', inside] = path?.split(/[\\/]/) ?? [];
      if (!path?.endsWith('.ts') || !BUILT.includes(name) || inside !== 'src') return resolved;
      return { id: join(folder, 'packages', path.replace(/\.ts$/, '.js')), external: true };
    },
  };
}

/** Builds every file of the packages, each into one of its own, beside what they look for at run time. */
async function buildInto(folder: string, plugins: readonly Plugin[]): Promise<void> {
  const conditions = ['source', 'node', 'import', 'default'];
  const before = process.env.NODE_ENV;
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    plugins: [...plugins],
    resolve: { conditions },
    ssr: { noExternal: [/^@fielded\//], resolve: { conditions } },
    build: {
      ssr: true,
      outDir: join(folder, 'packages'),
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      sourcemap: 'inline',
      rolldownOptions: {
        input: BUILT.flatMap(sourcesOf),
        // Everything stays, also what no other file asks for: a test may.
        treeshake: false,
        preserveEntrySignatures: 'strict',
        output: { preserveModules: true, preserveModulesRoot: PACKAGES, entryFileNames: '[name].js' },
      },
    },
  });
  process.env.NODE_ENV = before;
  for (const name of BUILT)
    cpSync(join(PACKAGES, name, 'package.json'), join(folder, 'packages', name, 'package.json'));
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
}

function sourcesOf(name: string): string[] {
  const source = join(PACKAGES, name, 'src');
  const files = readdirSync(source, { recursive: true, encoding: 'utf8' });
  return files.filter((file) => /(?<!\.d)\.ts$/.test(file)).map((file) => join(source, file));
}
