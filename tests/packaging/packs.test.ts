// Packs every package as it would be published, installs the packs into an empty folder, and uses them from there.
import { execFile } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { publint } from 'publint';
import { formatMessage } from 'publint/utils';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PACKAGES, packAll } from '../../tools/pack.ts';
import { builtCommand } from '../support/built-command.ts';
import { startRegistry } from '../support/own-registry.ts';
import { describeInLongRun } from '../support/trials.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** Libraries whose code is in the command's bundle. */
const TAKEN_IN = ['yaml', 'valibot', 'svgpath'];
/** How the packs' types are checked: their own and those they name, but not TypeScript's of JavaScript and browsers. */
const TYPES_CHECKED = {
  noEmit: true,
  strict: true,
  skipLibCheck: false,
  skipDefaultLibCheck: true,
  target: 'ES2023',
  types: [],
};
const folder = mkdtempSync(join(tmpdir(), 'fielded-packs-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }), 60_000);

async function call(command: string, args: string[], cwd: string): Promise<string> {
  return (await promisify(execFile)(command, args, { cwd, encoding: 'utf8', maxBuffer: 1 << 26 })).stdout;
}

const manifest = (name: string) => JSON.parse(readFileSync(join(root, 'packages', name, 'package.json'), 'utf8'));

let listed: Record<string, string[]> = {};

beforeAll(async () => {
  const packs = packAll(root, folder);
  listed = Object.fromEntries(packs.map(({ name, files }) => [name.split('/')[1]!, files.map(({ path }) => path)]));
  const published = packs.map(({ name, filename }) => ({ tarball: filename, manifest: manifest(name.split('/')[1]!) }));
  const { url, server } = await startRegistry(folder, published);
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name: 'a-shop', private: true, type: 'module' }));
  writeFileSync(join(folder, '.npmrc'), `@fielded:registry=${url}\n`);
  const names = packs.map(({ name }) => name);
  try {
    // With one thread for its 5,000 files, instead of four that wait for each other, npm takes a tenth less time.
    const install = ['npm', 'install', '--no-audit', '--no-fund', '--prefer-offline', ...names];
    await call('env', ['UV_THREADPOOL_SIZE=1', ...install], folder);
  } finally {
    server.close();
  }
}, 180_000);

describe.each(PACKAGES)('the pack of %s', (name) => {
  it('passes publint with nothing to say', async () => {
    const { version } = manifest(name);
    const tarball = readFileSync(join(folder, `fielded-${name}-${version}.tgz`));
    const { messages } = await publint({ pack: { tarball: Uint8Array.from(tarball).buffer }, strict: true });
    expect(messages.map((message) => formatMessage(message, manifest(name)))).toEqual([]);
  });

  it('carries its licence, what it exports, and no build records or tests', () => {
    const files = listed[name]!;
    expect(files).toContain('LICENSE');
    const doors =
      name === 'page'
        ? ['dist/site/index.html', 'dist/site/fielded.html', 'dist/site/LICENSES.txt']
        : ['dist/index.js', 'dist/index.d.ts'];
    expect(files).toEqual(expect.arrayContaining(doors));
    expect(files.filter((file) => /tsbuildinfo|\.test\.|node_modules/.test(file))).toEqual([]);
  });
});

describeInLongRun('the packs from another folder', () => {
  // Spaces, letters of three scripts, other dates, and files that only their owner may read.
  const elsewhere = join(folder, 'Türen – 門', 'Двери и панели');
  const copied = (source: string) => !/[\\/](node_modules|\.tsbuildinfo)$/.test(source);
  const closeToOthers = (place: string) => {
    for (const entry of readdirSync(place, { withFileTypes: true, recursive: true }))
      if (entry.isFile()) chmodSync(join(entry.parentPath, entry.name), 0o600);
  };
  beforeAll(() => {
    for (const name of ['package.json', 'tsconfig.json', 'tsconfig.base.json', 'tools', 'packages'])
      cpSync(join(root, name), join(elsewhere, name), { recursive: true, filter: copied });
    // The packages are those beside it, and so are libraries that the bundle takes in; the others are lent.
    mkdirSync(join(elsewhere, 'node_modules/@fielded'), { recursive: true });
    for (const name of readdirSync(join(root, 'node_modules')).filter((name) => name !== '@fielded')) {
      const [own, there] = [join(root, 'node_modules', name), join(elsewhere, 'node_modules', name)];
      if (TAKEN_IN.includes(name)) cpSync(own, there, { recursive: true });
      else symlinkSync(own, there);
    }
    for (const name of PACKAGES)
      symlinkSync(join(elsewhere, 'packages', name), join(elsewhere, 'node_modules/@fielded', name));
    closeToOthers(join(elsewhere, 'packages'));
  }, 60_000);

  it('are the same bytes', () => {
    const packs = packAll(elsewhere, join(elsewhere, 'packs'));
    expect(packs).toHaveLength(PACKAGES.length);
    for (const { filename } of packs) {
      const [here, there] = [join(folder, filename), join(elsewhere, 'packs', filename)].map((path) =>
        readFileSync(path),
      );
      expect(there!.equals(here!), filename).toBe(true);
    }
  });

  it('hold a bundle that is built there as it is here', async () => {
    const here = join(dirname(await builtCommand()), '../bundle');
    const there = join(elsewhere, 'built');
    // Started there: the bundle names its sources as seen from where it is built.
    const vite = join(root, 'node_modules/vite/bin/vite.js');
    await call(
      'env',
      ['NODE_ENV=production', 'node', vite, 'build', 'packages/cli', '--logLevel', 'error', '--outDir', there],
      elsewhere,
    );
    expect(readdirSync(there).sort()).toEqual(readdirSync(here).sort());
    for (const name of readdirSync(here))
      expect(readFileSync(join(there, name), 'utf8') === readFileSync(join(here, name), 'utf8'), name).toBe(true);
  });
});

describe('the bundle that the command starts from', () => {
  const bundle = join(root, 'packages/cli/bundle');
  it('is in the pack, with the licences of what it took in', () => {
    expect(listed.cli!).toEqual(expect.arrayContaining(['bundle/index.js', 'bundle/check.js', 'bundle/LICENSES.txt']));
    const licences = readFileSync(join(bundle, 'LICENSES.txt'), 'utf8');
    for (const name of TAKEN_IN) expect(licences).toMatch(new RegExp(`^${name} [\\d.]+$`, 'm'));
  });

  it('imports nothing but its own files, Node and what the command depends on', () => {
    const files = readdirSync(bundle).filter((file) => file.endsWith('.js'));
    const imported = files.flatMap((file) =>
      [
        ...readFileSync(join(bundle, file), 'utf8').matchAll(
          /^(?:import|export)\b[^'"]*["']([^'"]+)["']|\bimport\("([^"]+)"\)/gm,
        ),
      ].map(([, still, lazy]) => still ?? lazy!),
    );
    const outside = new Set(imported.filter((name) => !name.startsWith('./') && !name.startsWith('node:')));
    expect(outside.size).toBeGreaterThan(5);
    expect([...outside].filter((name) => !Object.hasOwn(manifest('cli').dependencies, name))).toEqual([]);
  });
});

describe('the packs in an empty folder', () => {
  it('check and draw a job', async () => {
    cpSync(join(root, 'examples/ogee-cove/job.yaml'), join(folder, 'job.yaml'));
    // As npx starts it, without the half second that npx takes to see that it stands there.
    const bin = join(folder, 'node_modules/.bin/fielded');
    const report = JSON.parse(await call(bin, ['check', 'job.yaml', '--json'], folder));
    expect(report.fit.verdict).toBe('sliding');
    await call(bin, ['draw', 'job.yaml', '--view', 'joint', '-o', 'joint.svg'], folder);
    expect(readFileSync(join(folder, 'joint.svg'), 'utf8').replace(/<!-- made by fielded \[\w+\] -->\n/, '')).toBe(
      readFileSync(join(root, 'docs/images/drawings/ogee-cove-joint.svg'), 'utf8'),
    );
  });

  it('give their types under NodeNext and bundler', async () => {
    writeFileSync(
      join(folder, 'use.ts'),
      `import { evaluate, readJob, type Report } from '@fielded/core';
import { draw } from '@fielded/render';
const { job, faults } = readJob('fielded: 1');
const line: number | undefined = faults[0]?.line;
const report: Report | null = job && evaluate(job);
export const svg: string = report ? draw(report, { view: 'joint' }) : String(line);
// @ts-expect-error a view that does not exist: types are really there
report && draw(report, { view: 'sideways' });
`,
    );
    const read = async (resolution: object) => {
      writeFileSync(
        join(folder, 'tsconfig.json'),
        JSON.stringify({ files: ['use.ts'], compilerOptions: { ...TYPES_CHECKED, ...resolution } }),
      );
      // Who does not clear up behind itself takes a fifth less time, and 200 MB.
      const tsc = join(root, 'node_modules/.bin/tsc');
      return (await call('env', ['GOGC=off', tsc, '--listFiles'], folder)).split('\n');
    };
    const files = await read({ moduleResolution: 'NodeNext', module: 'NodeNext' });
    expect(files.filter((file) => file.endsWith('/@fielded/render/dist/index.d.ts'))).toHaveLength(1);
    // Types that are found to be the same files are not checked again: those of the libraries take nearly all the time.
    const again = await read({ moduleResolution: 'bundler', module: 'ESNext', skipLibCheck: true });
    expect(again).toEqual(files);
  });

  it('leave out what a bundle does not use', async () => {
    writeFileSync(
      join(folder, 'length.js'),
      "import { parseLength } from '@fielded/core';\nconsole.log(parseLength('3/4 in', 'mm'));\n",
    );
    writeFileSync(
      join(folder, 'all.js'),
      "import { evaluate, readJob } from '@fielded/core';\nconsole.log(evaluate(readJob('').job));\n",
    );
    const sizeOf = async (entry: string) => {
      const input = join(folder, entry);
      const made = await build({
        root: folder,
        configFile: false,
        logLevel: 'silent',
        build: { write: false, lib: { entry: input, formats: ['es'] } },
      });
      const [{ output }] = (Array.isArray(made) ? made : [made]) as [{ output: { code?: string }[] }];
      return output.reduce((sum, { code = '' }) => sum + code.length, 0);
    };
    const [one, all] = [await sizeOf('length.js'), await sizeOf('all.js')];
    expect(one).toBeLessThan(10_000);
    expect(all).toBeGreaterThan(5 * one);
  });

  it('hold nothing whose engines Node 20.19 does not meet', () => {
    const lock = JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, { engines?: { node?: string } }>;
    };
    const unmet = Object.entries(lock.packages).filter(
      ([, { engines }]) => engines?.node && !allowsNode20(engines.node),
    );
    expect(unmet.map(([path, { engines }]) => `${path}: ${engines!.node}`)).toEqual([]);
  });

  it('would notice an engine that Node 20.19 does not meet', () => {
    expect(allowsNode20('>=18')).toBe(true);
    expect(allowsNode20('^20.19.0 || >=22.12.0')).toBe(true);
    expect(allowsNode20('>=22')).toBe(false);
    expect(allowsNode20('>= 20.20.0')).toBe(false);
  });
});

/** Whether a range of `engines` lets Node 20.19.0 in: any of its alternatives, every part of which holds. */
function allowsNode20(range: string): boolean {
  return range.split('||').some((part) =>
    [...part.matchAll(/(>=|>|\^|~|<=|<|=)?\s*v?(\d+)(?:\.(\d+|x|\*))?(?:\.(\d+|x|\*))?/g)].every(
      ([, sign = '=', ...numbers]) => {
        const [major = 0, minor = 0, patch = 0] = numbers.map((n) => Number(n) || 0);
        const order = 20 - major || 19 - minor || 0 - patch;
        if (sign === '>=') return order >= 0;
        if (sign === '>') return order > 0;
        if (sign === '<') return order < 0;
        if (sign === '<=') return order <= 0;
        return major === 20 && (sign === '=' ? numbers[1] === undefined || order === 0 : order >= 0);
      },
    ),
  );
}
