// A file is whole or as it was, whatever happens while it is written; and what went wrong is one plain line.
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import fs, { linkSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { writeWhole } from '../../packages/cli/src/files/write-whole.ts';
import { beside, buildWriter, killWriting } from '../kills/kill-writing.ts';
import { listKinds, makeWholes } from '../kills/kinds.ts';
import { builtCommand } from '../support/built-command.ts';
import { inLongRun, trials } from '../support/trials.ts';
import { makeFolder, put, run, spawnCommand } from './command.ts';

const folder = makeFolder();
const root = fileURLToPath(new URL('../..', import.meta.url));
const example = join(root, 'examples/ogee-cove/job.yaml');

const TEXTS = ['old', 'new'].map((word) => `${word}\n`.repeat(200_000)) as [string, string];
const isWhole = (path: string) => TEXTS.includes(readFileSync(path, 'utf8'));

/** A writer that is killed with half a file in the place of a whole one. */
const IN_PLACE = `import { writeFileSync, openSync, closeSync } from 'node:fs';
export function writeWhole(path, content) {
  const file = openSync(path, 'w');
  writeFileSync(file, content);
  closeSync(file);
  return null;
}
`;
const CHANGES_A_DISK = /\b(writeFile|appendFile|createWriteStream|copyFile|cpSync|rename|openSync)/;

describe('a writer killed at any moment', () => {
  /** Everything that changes a disk. */
  const CALLS = [
    'mkdirSync',
    'openSync',
    'fchmodSync',
    'writeFileSync',
    'fsyncSync',
    'closeSync',
    'renameSync',
  ] as const;

  /** Writes a text over another and stops for good at the n-th such call, half of what is to be written on the disk; false past the last. */
  function stopAt(n: number, path: string): boolean {
    let calls = 0;
    const stopped = new Error('stopped');
    const kept = [...CALLS, 'rmSync', 'unlinkSync', 'writeSync'].map((name) => [name, fs[name as 'rmSync']] as const);
    for (const [name, given] of kept) {
      const call = given as (...given: unknown[]) => unknown;
      Object.assign(fs, {
        [name]: (...given: unknown[]) => {
          if (calls === n && name === 'writeFileSync') call(given[0], String(given[1]).slice(0, 300_000));
          if (calls >= n) throw stopped;
          calls++;
          return call(...given);
        },
      });
    }
    syncBuiltinESMExports();
    try {
      writeWhole(path, TEXTS[1]);
    } catch (error) {
      if (error !== stopped) throw error;
    } finally {
      Object.assign(fs, Object.fromEntries(kept));
      syncBuiltinESMExports();
    }
    return calls >= n;
  }

  it('leaves the old file or the new one, whole, at whichever call it stops', () => {
    const path = join(folder, 'stopped.svg');
    let n = 0;
    do {
      put(folder, 'stopped.svg', TEXTS[0]);
      for (const name of readdirSync(folder)) if (name.endsWith('.part')) rmSync(join(folder, name));
    } while (stopAt(n++, path) && isWhole(path));
    expect(isWhole(path), `call ${n}`).toBe(true);
    // It went through all its calls, and the last one put the new text there.
    expect(n).toBeGreaterThanOrEqual(CALLS.length);
    expect(readFileSync(path, 'utf8')).toBe(TEXTS[1]);
  });

  it('leaves the old file or the new one of each kind, whole, and no litter', { timeout: 120_000 }, async () => {
    const place = join(folder, 'kills');
    mkdirSync(join(place, 'aside'), { recursive: true });
    const built = inject('builtPackages');
    const writer = built === '' ? await buildWriter(place) : join(built, 'cli/src/files/write-whole.js');
    // Of the kinds that npm run kills goes through, those whose files are made in a moment.
    const quick = ['draw .svg', 'draw .dxf', 'knife .csv', 'knife .dxf', 'board .svg', 'solve --write', 'plan --write'];
    const kinds = (await listKinds(place)).filter(({ name }) => quick.includes(name));
    expect(kinds).toHaveLength(quick.length);
    const kills = trials(1, 2);
    let killed = 0;
    for (const kind of kinds) {
      const wholes = await makeWholes(kind, join(place, 'aside'));
      const outcomes = await Promise.all(
        [1, 2].slice(0, kills).map((i) => killWriting(writer, wholes, (killed * 1.7 + i * 2.3) % 9)),
      );
      for (const outcome of outcomes) {
        expect(outcome, kind.name).toMatchObject({ killed: true, strange: [] });
        expect(['old', 'new'], kind.name).toContain(outcome.found);
        killed++;
      }
      // What a killed writer left beside its file goes with the next one that is let alone.
      writeWhole(kind.file, wholes.fresh);
      expect(beside(kind.file), kind.name).toEqual({ parts: 0, strange: [] });
    }
    expect(killed).toBe(kills * quick.length);
  });
});

describe('the trial of kills', () => {
  it('sees a file torn by a writer that writes in place', { timeout: 60_000 }, async () => {
    const place = join(folder, 'in-place');
    mkdirSync(join(place, 'aside'), { recursive: true });
    const writer = put(place, 'writer.mjs', IN_PLACE);
    const [kind] = (await listKinds(place)).filter(({ name }) => name === 'draw .dxf');
    const wholes = await makeWholes(kind!, join(place, 'aside'));
    const found: string[] = [];
    for (let i = 0; i < 8 && !found.includes('torn'); i++) found.push((await killWriting(writer, wholes, i)).found);
    expect(found).toContain('torn');
  });

  it('is of the only writer there is', () => {
    const sources = join(root, 'packages/cli/src');
    const files = readdirSync(sources, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
    const writes = files.filter((name) => CHANGES_A_DISK.test(readFileSync(join(sources, name), 'utf8')));
    expect(writes).toEqual([join('files', 'write-whole.ts')]);
  });
});

describe('a disk with no room, and one that cannot be written', () => {
  const disk = join(folder, 'disk');
  const asRoot = process.getuid?.() === 0;
  const mount = (...options: string[]) => {
    mkdirSync(disk, { recursive: true });
    return spawnSync('mount', ['-t', 'tmpfs', ...options, 'tmpfs', disk]).status === 0;
  };
  afterEach(() => {
    spawnSync('umount', [disk]);
  });

  it('a full disk is one plain line, status 2, and no part of a file', async ({ skip }) => {
    if (!asRoot || !mount('-o', 'size=4k')) skip('needs to mount a small disk');
    const { status, out, err } = await run(['draw', example, '--view', 'joint', '-o', join(disk, 'joint.svg')]);
    expect({ status, out, err }).toEqual({
      status: 2,
      out: '',
      err: `${join(disk, 'joint.svg')}  The disk is full. Make room on it.\n`,
    });
    expect(readdirSync(disk)).toEqual([]);
  });

  it('a disk mounted for reading is one plain line and status 2', async ({ skip }) => {
    if (!asRoot || !mount('-o', 'ro')) skip('needs to mount a disk for reading only');
    const { status, err } = await run(['draw', example, '--view', 'joint', '-o', join(disk, 'joint.svg')]);
    expect({ status, err }).toEqual({
      status: 2,
      err: `${join(disk, 'joint.svg')}  Nothing can be written there. Choose another folder.\n`,
    });
  });
});

describe('a file that stands there already', () => {
  const shop = join(root, 'examples/shop/shop.yaml');
  const scan = join(root, 'examples/traced-sample/sample.png');
  const kitchen = join(root, 'examples/kitchen/job.yaml');
  const knives = `knives: { cove: { shape: cove, reach: 14, depth: 4.8, land: 9, head: small } }`;
  const heads = `heads: { small: { cuttingDiameter: 112, bodyDiameter: 70, height: 40, rake: 15, maxSpeed: 9000 } }`;
  const oneKnife = put(folder, 'one-knife.yaml', `fielded: 1\n${knives}\n${heads}\n`);
  /** A file of every kind, by each of the commands. */
  const daily: [string, string[]][] = [
    ['joint.pdf', ['draw', example]],
    ['joint.png', ['draw', example, '--dpi', '40']],
    ['knife.dxf', ['knife', shop, '--name', 'ogee-38']],
    ['board.svg', ['board', oneKnife]],
    ['board.html', ['board', oneKnife]],
    ['traced.yaml', ['trace', scan]],
    ['cutting.csv', ['cutting-list', kitchen]],
  ];
  const others: [string, string[]][] = [
    ['joint.svg', ['draw', example]],
    ['joint.html', ['draw', example]],
    ['knife.svg', ['knife', shop, '--name', 'ogee-38']],
    ['knife.csv', ['knife', shop, '--name', 'ogee-38']],
    ['traced.dxf', ['trace', scan]],
  ];

  const NAME = '%s: ours is replaced, an empty one too, someone else’s only with --force';
  const isReplacedIfOurs = async (name: string, argv: string[]) => {
    const path = put(folder, name, '');
    const first = await run([...argv, '-o', path]);
    expect(first.status, first.err).toBeLessThan(2);
    const written = readFileSync(path);
    expect((await run([...argv, '-o', path])).status).toBe(first.status);
    expect(readFileSync(path).equals(written)).toBe(true);

    put(folder, name, 'a drawing of a raised and fielded panel, made by hand');
    const refused = await run([...argv, '-o', path]);
    expect({ status: refused.status, err: refused.err }).toEqual({
      status: 2,
      err: `${path}  This file is there already, and fielded did not write it. Choose another name, or give --force to replace it.\n`,
    });
    expect(readFileSync(path, 'utf8')).toBe('a drawing of a raised and fielded panel, made by hand');
    expect((await run([...argv, '-o', path, '--force'])).status).toBe(first.status);
    expect(readFileSync(path).equals(written)).toBe(true);
  };
  it.each(daily)(NAME, isReplacedIfOurs);
  inLongRun.each(others)(NAME, isReplacedIfOurs);

  it('a traced job is not replaced once a maker has written the frame into it', async () => {
    const path = join(folder, 'edited.yaml');
    await run(['trace', scan, '-o', path]);
    const edited = readFileSync(path, 'utf8').replace('thickness: 22', 'thickness: 24');
    put(folder, 'edited.yaml', edited);
    expect(await run(['trace', scan, '-o', path])).toMatchObject({
      status: 2,
      err: `${path}  This file has been changed since fielded wrote it. Choose another name, or give --force to replace it.\n`,
    });
    expect(readFileSync(path, 'utf8')).toBe(edited);
  });
});

describe('someone who stops listening', () => {
  it('a pipe closed after a line ends quietly, with the status of the job', async () => {
    const { status, err } = await spawnCommand(['check', '--json', example], ' | head -c 1 >/dev/null');
    expect({ status, err }).toEqual({ status: 0, err: '' });
  });

  it('an interrupt while a folder is checked is one plain line and status 130', async () => {
    const many = join(folder, 'many');
    mkdirSync(many);
    const one = put(folder, 'one.yaml', readFileSync(example));
    for (let i = 0; i < 2000; i++) linkSync(one, join(many, `job-${i}.yaml`));
    // The command tells, beside its own output, as soon as it listens for an interrupt.
    const telling = `import{writeSync}from'node:fs';process.on('newListener',(name)=>name==='SIGINT'&&writeSync(3,name))`;
    const argv = ['--import', `data:text/javascript,${telling}`, await builtCommand(), 'check', many];
    const child = spawn(process.execPath, argv, { stdio: ['pipe', 'pipe', 'pipe', 'pipe'] });
    let [out, err] = ['', ''];
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.on('data', (text) => {
      err += text;
    });
    const ended = new Promise<number | null>((settle) => child.on('close', settle));
    await once(child.stdio[3]!, 'data');
    await wait(150);
    child.kill('SIGINT');
    const status = await ended;
    expect({ status, out, err }).toEqual({
      status: 130,
      out: '',
      err: '\nfielded: interrupted. Files written so far are whole.\n',
    });
  });
});
