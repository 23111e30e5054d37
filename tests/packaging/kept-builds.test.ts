// A build is used again only where it is of these sources, to the byte, and stands as it was made.
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hashSources, isNoted, noteBuild } from '../../tools/note-build.ts';
import { fillFromKept } from '../support/kept-builds.ts';
import { scratchFolder } from '../support/programs.ts';

const folder = scratchFolder();
const SITE = { name: 'site', steps: ['page', 'page-single'], own: 'packages/page/dist' };

/** The steps of a build that the plugin is told of. */
type Steps = Record<'configResolved' | 'buildStart' | 'closeBundle', (given?: object) => void>;

/** A workspace with one package, whose page is built in two steps. */
function workspace(name: string) {
  const root = join(folder, name);
  const own = join(root, SITE.own);
  const put = (path: string, text: string) => {
    mkdirSync(join(root, path, '..'), { recursive: true });
    writeFileSync(join(root, path), text);
  };
  for (const path of ['package-lock.json', 'tools/a.ts', 'packages/page/src/a.ts', 'packages/page/vite.config.ts'])
    put(path, `of ${path}`);
  const step = (of: string, file: string) => {
    const plugin = noteBuild(root, of, own) as unknown as Steps;
    plugin.configResolved({ root, build: { outDir: own } });
    plugin.buildStart();
    put(join(SITE.own, file), file);
    plugin.closeBundle();
  };
  const noted = () => isNoted(root, SITE.steps, own, hashSources(root));
  const build = () => {
    step('page', 'index.html');
    step('page-single', 'fielded.html');
  };
  return { root, put, step, noted, build };
}

describe('what npm run build made', () => {
  it.each(['package-lock.json', 'tools/a.ts', 'packages/page/src/a.ts', 'packages/page/vite.config.ts'])(
    'is of other sources once %s is another',
    (path) => {
      const { put, build, noted } = workspace(path.replaceAll('/', '-'));
      expect(noted()).toBe(false);
      build();
      expect(noted()).toBe(true);
      put(path, `of ${path}, changed`);
      expect(noted()).toBe(false);
      put(path, `of ${path}`);
      expect(noted()).toBe(true);
    },
  );

  it('is of other sources once a file comes, goes or is called otherwise', () => {
    const { root, put, build, noted } = workspace('files');
    build();
    put('packages/page/src/b.ts', '');
    expect(noted()).toBe(false);
    rmSync(join(root, 'packages/page/src/b.ts'));
    expect(noted()).toBe(true);
    renameSync(join(root, 'packages/page/src/a.ts'), join(root, 'packages/page/src/c.ts'));
    expect(noted()).toBe(false);
  });

  it('is not taken where it was touched, half made, or made while a source changed', () => {
    const { put, step, build, noted } = workspace('touched');
    build();
    put('packages/page/dist/index.html', 'touched');
    expect(noted()).toBe(false);
    build();
    expect(noted()).toBe(true);
    // The second step alone is of the new sources.
    put('packages/page/src/a.ts', 'new');
    step('page-single', 'fielded.html');
    expect(noted()).toBe(false);
    build();
    expect(noted()).toBe(true);
    const { root, noted: notedThere } = workspace('meanwhile');
    for (const of of SITE.steps) {
      const plugin = noteBuild(root, of, join(root, SITE.own)) as unknown as Steps;
      plugin.configResolved({ root, build: { outDir: join(root, SITE.own) } });
      plugin.buildStart();
      writeFileSync(join(root, 'tools/a.ts'), of);
      plugin.closeBundle();
    }
    expect(notedThere()).toBe(false);
  });
});

it('a run of the tests uses what an earlier one built of the same sources, and builds anew for others', async () => {
  const { root, put, build } = workspace('runs');
  let built = 0;
  const run = async (name: string) => {
    const into = join(root, name);
    mkdirSync(into);
    await fillFromKept(root, SITE, into, async () => writeFileSync(join(into, 'index.html'), `build ${++built}`));
    return readFileSync(join(into, 'index.html'), 'utf8');
  };
  expect(await run('first')).toBe('build 1');
  expect(await run('second')).toBe('build 1');
  put('packages/page/src/a.ts', 'new');
  expect(await run('third')).toBe('build 2');
  put('packages/page/src/a.ts', 'of packages/page/src/a.ts');
  expect(await run('fourth')).toBe('build 1');
  // What npm run build made of them comes before.
  build();
  expect(await run('fifth')).toBe('index.html');
});
