// Files that people have: what is written into them, what is left alone, and what a failed write is called.
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { makeFolder, put, run, spawnCommand } from './command.ts';

const folder = makeFolder();
const root = fileURLToPath(new URL('../..', import.meta.url));
const example = join(root, 'examples/ogee-cove/job.yaml');
const job = (name: string) => put(folder, name, readFileSync(example));
const solve = (path: string) => run(['solve', path, '--for', 'clearance=0.3', '--by', 'back relief.depth', '--write']);

describe('standard output that cannot be written', () => {
  it.each([
    ['check', [example]],
    ['check', ['--json', example]],
    ['draw', [example]],
    ['help', []],
    ['completion', ['bash']],
    ['--version', []],
  ])('a full one is one line and status 2: %s %j', async (command, rest) => {
    if (!existsSync('/dev/full')) throw new Error('this test needs /dev/full, which Linux has');
    expect(await spawnCommand([command, ...rest], ' >/dev/full')).toEqual({
      status: 2,
      out: '',
      err: 'fielded: standard output could not be written: the disk is full. Make room on it.\n',
    });
  });
});

describe('solve --write', () => {
  it('writes to the file that a link names, and keeps its permissions', async () => {
    const path = job('linked.yaml');
    chmodSync(path, 0o640);
    const link = join(folder, 'link.yaml');
    symlinkSync(path, link);
    expect((await solve(link)).status).toBe(0);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(statSync(path).mode & 0o777).toBe(0o640);
    expect(readFileSync(path, 'utf8')).not.toBe(readFileSync(example, 'utf8'));
  });

  it('leaves a file alone that is read-only, or that has another name', async () => {
    const path = job('kept.yaml');
    chmodSync(path, 0o444);
    expect((await solve(path)).err).toContain('This file is marked as read-only.');
    chmodSync(path, 0o644);
    linkSync(path, join(folder, 'second-name.yaml'));
    expect((await solve(path)).err).toContain('This file has 2 names (hard links), and replacing it would part them.');
    expect(readFileSync(path, 'utf8')).toBe(readFileSync(example, 'utf8'));
  });
});

describe('an output', () => {
  it('never goes over the file that it was made from, by whatever name, even with --force', async () => {
    const path = job('own.yaml.svg');
    symlinkSync(path, join(folder, 'alias.svg'));
    for (const name of ['own.yaml.svg', 'alias.svg']) {
      const { status, err } = await run(['draw', path, '-o', join(folder, name), '--force']);
      expect(status).toBe(2);
      expect(err).toContain('This file was read for what is to be written into it. Choose another name.');
    }
    expect(readFileSync(path, 'utf8')).toBe(readFileSync(example, 'utf8'));
  });

  it.each(['joint.svg', 'joint.html', 'knife.dxf'])('never goes over %s after a hand has changed it', async (name) => {
    const path = join(folder, name);
    const argv = name.endsWith('.dxf')
      ? ['knife', join(root, 'examples/shop/shop.yaml'), '--name', 'ogee-38', '-o', path]
      : ['draw', example, '-o', path];
    await run(argv);
    expect((await run(argv)).status).toBeLessThan(2);
    writeFileSync(path, readFileSync(path, 'utf8').replace('1', '2'));
    const changed = readFileSync(path, 'utf8');
    const { status, err } = await run(argv);
    expect([status, readFileSync(path, 'utf8')]).toEqual([2, changed]);
    expect(err).toContain('This file has been changed since fielded wrote it.');
    expect((await run([...argv, '--force'])).status).toBeLessThan(2);
  });

  it('does not replace a pipe, a device or a link to nothing', async () => {
    const pipe = join(folder, 'pipe.svg');
    spawnSync('mkfifo', [pipe]);
    symlinkSync(join(folder, 'nowhere.svg'), join(folder, 'dangling.svg'));
    const said = async (path: string) => (await run(['draw', example, '-o', path, '--force'])).err;
    expect(await said(pipe)).toContain('This is a device or a pipe, not a plain file.');
    expect(await said(join(folder, 'dangling.svg'))).toContain('This is a link to a file that is not there.');
    expect(lstatSync(pipe).isFIFO()).toBe(true);
  });

  it('says of too long a name that it is', async () => {
    expect((await run(['draw', example, '-o', join(folder, `${'x'.repeat(300)}.svg`)])).err).toContain(
      'The name is too long. Choose a shorter one.',
    );
  });

  it('sweeps what a killed run left beside it, and nothing else', async () => {
    const place = join(folder, 'swept');
    mkdirSync(place);
    const gone = spawnSync('true').pid;
    for (const name of [`.j.svg.${gone}.part`, `.j.svg.${process.pid}.part2`, `.other.svg.${gone}.part`])
      writeFileSync(join(place, name), '');
    await run(['draw', example, '-o', join(place, 'j.svg')]);
    expect(readdirSync(place).sort()).toEqual(
      [`.j.svg.${process.pid}.part2`, `.other.svg.${gone}.part`, 'j.svg'].sort(),
    );
  });

  it('is no picture of more than 100 million pixels', async () => {
    const { status, err } = await run([
      'draw',
      example,
      '--scale',
      '50:1',
      '--dpi',
      '1200',
      '-o',
      join(folder, 'x.png'),
    ]);
    expect(status).toBe(2);
    expect(err).toMatch(
      /^fielded: --dpi 1200 would make a picture of more than 100 million pixels\. Up to --dpi \d+ fits/,
    );
  });
});

describe('names with characters that nobody sees', () => {
  it('reach neither terminal nor JSON as they are', async () => {
    const bad = 'raise\u202E\u200F\u2066x';
    const path = put(folder, 'bidi.yaml', readFileSync(example, 'utf8').replaceAll(/name: raise/g, `name: "${bad}"`));
    const plain = await run(['check', path]);
    const json = await run(['check', '--json', path]);
    for (const text of [plain.out, plain.err, json.out])
      expect(text).not.toMatch(/[\u202A-\u202E\u2066-\u2069\u200E\u200F]/);
    expect(JSON.parse(json.out).section.cuts[0].name).toBe(bad);
  });
});
