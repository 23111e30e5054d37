// Holds the direction of imports: one way, no circles, nobody past another package's door.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const PACKAGES = readdirSync(join(root, 'packages'));

/** Folders of geometry from the ground up: each may import from those before it. */
const ROOMS = ['curve', 'loop', 'strips', 'offset', 'fit', 'path'];
/** Folders of core from the ground up: each may import from those before it and `wood`. */
const FLOORS = [
  'measure',
  'problem',
  'profile',
  'shop',
  'machining',
  'joint',
  'door',
  'spread',
  'season',
  'job',
  'knife',
  'setup',
  'report',
  'quote',
  'reading',
  'solve',
  'writing',
];
const ANYWHERE = ['wood'];
/** Rooms of render from the ground up, with the files that stand beside them. */
const RENDER_ROOMS = [
  'write-number.ts',
  'load-part.ts',
  'paper.ts',
  'text',
  'scene.ts',
  'style.ts',
  'svg.ts',
  'geometry',
  'words',
  'dimension',
  'views',
  'sheet',
  'document',
  'client',
  'cutting',
  'order',
  'plan',
  'letters',
  'pdf',
  'outline-layers.ts',
  'live.ts',
  'html.ts',
  'draw.ts',
];
/** Rooms of the page from the ground up. What is fetched later may stand above. */
const PAGE_ROOMS = ['words', 'style', 'job', 'desk', 'offline', 'entry', 'stage', 'files', 'panels', 'shell'];
const MAY_USE: Record<string, string[]> = {
  geometry: [],
  core: ['geometry'],
  render: ['geometry', 'core'],
  exchange: ['geometry', 'core'],
  cli: ['geometry', 'core', 'render', 'exchange'],
  page: ['geometry', 'core', 'render', 'exchange'],
};

interface Import {
  readonly file: string;
  readonly target: string;
}

function importsOf(source: string): string[] {
  return [...source.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((m) => m[1]!);
}

/** The imports of a file that come with it, without those fetched later. */
function importsAtOnce(source: string): string[] {
  return importsOf(source.replace(/import\s*\(\s*'[^']+'/g, ''));
}

/** Everything of a package that is kept: sources, build files, tools, package.json, pages and styles. */
function filesOf(name: string): string[] {
  const out = execFileSync(
    'git',
    ['ls-files', '-z', '--cached', '--others', '--exclude-standard', `packages/${name}`],
    {
      cwd: root,
      encoding: 'utf8',
    },
  );
  return out.split('\0').filter((file) => /\.(tsx?|m?js|json|html|css)$/.test(file));
}

/** Folders of other packages that a file names by a path, `file` being its place below the root. */
function reachesInto(file: string, text: string): string[] {
  const own = file.split('/')[1];
  // A build of TypeScript names what it stands on by folder: those are held to be allowed packages instead.
  const paths = file.endsWith('tsconfig.json') ? [] : [...text.matchAll(/['"`(]((?:\.\.?\/|packages\/)[^'"`)\s]*)/g)];
  return paths.flatMap(([, path]) => {
    const full = path!.startsWith('packages/') ? path! : join(dirname(file), path!);
    const [folder, name] = full.split('/');
    return folder === 'packages' && name !== own && PACKAGES.includes(name!) ? [`${file} reaches ${full}`] : [];
  });
}

/** Packages that a package's TypeScript build stands on. */
function buildsOn(name: string): string[] {
  const { references = [] } = JSON.parse(readFileSync(join(root, 'packages', name, 'tsconfig.json'), 'utf8'));
  return (references as { path: string }[]).map(({ path }) => path.split('/')[1]!);
}

function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') || name.endsWith('.tsx'))
    .map((name) => join(folder, name));
}

function readImports(
  name: string,
  files: readonly string[] = sourceFiles(join(root, 'packages', name, 'src')),
  read: (source: string) => string[] = importsOf,
): Import[] {
  return files.flatMap((file) => read(readFileSync(file, 'utf8')).map((target) => ({ file, target })));
}

/** Why an import breaks the order of a package's rooms, or null. */
function climbs(from: string, to: string, floors: readonly string[] = FLOORS): string | null {
  const [a, b] = [from.split('/')[0]!, to.split('/')[0]!];
  if (a === b || a === 'index.ts' || a === 'main.tsx' || ANYWHERE.includes(b)) return null;
  if (ANYWHERE.includes(a)) return `${from} stands alone but imports ${to}`;
  return floors.indexOf(a) > floors.indexOf(b) && floors.includes(b) ? null : `${from} imports ${to} from above`;
}

/** The first circle among files, as the way round it. */
function findCircle(edges: ReadonlyMap<string, readonly string[]>): string[] | null {
  const done = new Set<string>();
  const walk = (file: string, way: string[]): string[] | null => {
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file];
    if (done.has(file)) return null;
    for (const next of edges.get(file) ?? []) {
      const circle = walk(next, [...way, file]);
      if (circle !== null) return circle;
    }
    done.add(file);
    return null;
  };
  for (const file of edges.keys()) {
    const circle = walk(file, []);
    if (circle !== null) return circle;
  }
  return null;
}

/** Whether a package's own list of exports offers a path below it. */
function opensTo(name: string, path: string): boolean {
  const { exports } = JSON.parse(readFileSync(join(root, 'packages', name, 'package.json'), 'utf8'));
  return Object.keys(exports).some((door) => {
    const [start, end] = door.split('*');
    return end === undefined ? `.${path}` === door : `.${path}`.startsWith(start!) && path.endsWith(end);
  });
}

/** Packages of ours that a package declares and may not use. The command line also ships the built page, as files. */
function forbidden(name: string, dependencies: readonly string[]): string[] {
  const allowed = [...MAY_USE[name]!, ...(name === 'cli' ? ['page'] : [])];
  return dependencies.filter((one) => one.startsWith('@fielded/') && !allowed.includes(one.slice('@fielded/'.length)));
}

describe('imports', () => {
  it.each([
    ['core', 'the job down to the measures', FLOORS, importsOf],
    ['geometry', 'path data down to single curves', ROOMS, importsOf],
    ['render', 'files down to the scene', RENDER_ROOMS, importsAtOnce],
    ['page', "the page's frame down to its words", PAGE_ROOMS, importsAtOnce],
  ])('inside %s run from %s', (name, _way, floors, read) => {
    const source = join(root, 'packages', name, 'src');
    const relativeImports = readImports(name, undefined, read).filter(({ target }) => target.startsWith('.'));
    expect(relativeImports.length).toBeGreaterThan(50);
    const faults = relativeImports
      .map(({ file, target }) =>
        climbs(relative(source, file), relative(source, resolve(dirname(file), target)), floors),
      )
      .filter((fault) => fault !== null);
    expect(faults).toEqual([]);
  });

  it.each(PACKAGES)('of %s make no circle', (name) => {
    const edges = new Map<string, string[]>();
    for (const { file, target } of readImports(name)) {
      if (target.startsWith('.')) edges.set(file, [...(edges.get(file) ?? []), resolve(dirname(file), target)]);
    }
    expect(findCircle(edges)?.map((file) => relative(root, file)) ?? []).toEqual([]);
  });

  it.each(PACKAGES)('of %s go through the front door of packages it may use', (name) => {
    const faults = readImports(name).filter(({ file, target }) => {
      if (target.startsWith('.'))
        return !resolve(dirname(file), target).startsWith(join(root, 'packages', name, 'src'));
      const own = target.match(/^@fielded\/([^/]+)(\/[^?]*)?/);
      return own !== null && (!MAY_USE[name]!.includes(own[1]!) || !opensTo(own[1]!, own[2] ?? ''));
    });
    expect(faults).toEqual([]);
  });

  it.each(PACKAGES)('of %s are what its package.json declares', (name) => {
    const { dependencies = {} } = JSON.parse(readFileSync(join(root, 'packages', name, 'package.json'), 'utf8'));
    expect(forbidden(name, Object.keys(dependencies))).toEqual([]);
  });

  it.each(PACKAGES)('of the build files and tools of %s too', (name) => {
    const beside = filesOf(name).filter((file) => /\.tsx?$/.test(file) && !file.startsWith(`packages/${name}/src/`));
    const faults = readImports(
      name,
      beside.map((file) => join(root, file)),
    ).filter(({ target }) => {
      const own = target.match(/^@fielded\/([^/]+)(\/[^?]*)?/);
      return own !== null && own[1] !== name && (!MAY_USE[name]!.includes(own[1]!) || !opensTo(own[1]!, own[2] ?? ''));
    });
    expect(faults).toEqual([]);
    expect(buildsOn(name).filter((one) => !MAY_USE[name]!.includes(one))).toEqual([]);
  });

  it.each(PACKAGES)('of %s reach into no other package by path', (name) => {
    const files = filesOf(name);
    expect(files.length).toBeGreaterThan(2);
    expect(files.flatMap((file) => reachesInto(file, readFileSync(join(root, file), 'utf8')))).toEqual([]);
  });

  it('would be caught if they reached past the doors', () => {
    const config = 'packages/page/vite.config.ts';
    expect(reachesInto(config, "here('../cli/fonts/a.ttf'); here('./src/x'); here('../../tools/y.ts')")).toEqual([
      `${config} reaches packages/cli/fonts/a.ttf`,
    ]);
    expect(reachesInto('packages/page/src/style/a.css', 'src: url(../../../render/fonts/a.ttf)')).toHaveLength(1);
    expect(reachesInto('packages/core/package.json', '{ "files": ["../geometry/dist"] }')).toHaveLength(1);
    expect(reachesInto('packages/core/tools/a.ts', 'read("packages/render/src/b.ts")')).toHaveLength(1);
    expect(reachesInto('packages/core/src/a.ts', "import '../../geometry/src/b.ts'")).toHaveLength(1);
    expect(opensTo('render', '/fonts/OFL.txt')).toBe(true);
    expect(opensTo('render', '/src/index.ts')).toBe(false);
  });

  it('would be caught if they climbed or went in a circle', () => {
    expect(climbs('machining/sweep.ts', 'joint/section.ts')).toBe(
      'machining/sweep.ts imports joint/section.ts from above',
    );
    expect(climbs('curve/along.ts', 'fit/biarc.ts', ROOMS)).toBe('curve/along.ts imports fit/biarc.ts from above');
    expect(climbs('fit/biarc.ts', 'along.ts', ROOMS)).toBe('fit/biarc.ts imports along.ts from above');
    expect(forbidden('core', ['yaml', '@fielded/geometry', '@fielded/render'])).toEqual(['@fielded/render']);
    expect(climbs('wood/moisture.ts', 'machining/sweep.ts')).toBe(
      'wood/moisture.ts stands alone but imports machining/sweep.ts',
    );
    expect(
      findCircle(
        new Map([
          ['a', ['b']],
          ['b', ['c']],
          ['c', ['a']],
        ]),
      ),
    ).toEqual(['a', 'b', 'c', 'a']);
    expect(climbs('desk/desk.ts', 'shell/app.tsx', PAGE_ROOMS)).toBe('desk/desk.ts imports shell/app.tsx from above');
    expect(climbs('scene.ts', 'views/door.ts', RENDER_ROOMS)).toBe('scene.ts imports views/door.ts from above');
    expect(importsAtOnce("import { x } from './y.ts';\nconst z = await import('./lazy.ts');")).toEqual(['./y.ts']);
    expect(importsOf("import { x } from './y.ts';\nconst z = await import('./lazy.ts');")).toEqual([
      './y.ts',
      './lazy.ts',
    ]);
  });
});
