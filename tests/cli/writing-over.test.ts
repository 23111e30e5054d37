// Files that people have: what is written into them, what is left alone, and what a failed write is called.
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  createWriteStream,
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
import { PassThrough } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../packages/cli/src/commands.ts';
import { processIo } from '../../packages/cli/src/io.ts';
import { makeFolder, put, run, spawnCommand } from './command.ts';

const folder = makeFolder();
const root = fileURLToPath(new URL('../..', import.meta.url));
const example = join(root, 'examples/ogee-cove/job.yaml');
const kitchen = join(root, 'examples/kitchen/job.yaml');
const shop = join(root, 'examples/shop/shop.yaml');
const job = (name: string) => put(folder, name, readFileSync(example));
const solve = (path: string) => run(['solve', path, '--for', 'clearance=0.3', '--by', 'back relief.depth', '--write']);

describe('standard output that cannot be written', () => {
  /** Of each command a use that prints; `open` prints its address. */
  const PRINTING: Readonly<Record<string, readonly string[]>> = {
    check: [example],
    draw: [example],
    'cutting-list': [kitchen],
    quote: [kitchen, '--date', '2026-03-14'],
    template: [join(root, 'examples/wardrobe/job.yaml')],
    solve: [example, '--for', 'clearance=0.3', '--by', 'back relief.depth'],
    knife: [shop, '--name', 'ogee-38'],
    trace: [join(root, 'examples/traced-sample/sample.png')],
    match: [kitchen, '--cut', 'raise'],
    plan: [kitchen],
    sample: [example],
    board: [shop],
    open: [example, '--no-browser'],
    language: [],
    completion: ['bash'],
    help: [],
  };

  it('is tried for every command that there is', () => {
    expect(Object.keys(PRINTING)).toEqual(Object.keys(COMMANDS));
  });

  const FULL = 'fielded: standard output could not be written: the disk is full. Make room on it.\n';
  const given = [...Object.entries(PRINTING), ['check', ['--json', example]] as const, ['--version', []] as const];
  /** These as processes of their own, on their own output; of the others the command is told to write where there is no room. */
  const ALONE = ['check --json', '--version'];

  it.each(given)('a full one is one line and status 2: %s %j', async (command, rest) => {
    if (!existsSync('/dev/full')) throw new Error('this test needs /dev/full, which Linux has');
    const argv = [command, ...rest];
    const alone = ALONE.some((start) => argv.join(' ').startsWith(start));
    const { status, out, err } = await (alone
      ? spawnCommand(argv, ' >/dev/full')
      : run(argv, { out: processIo(createWriteStream('/dev/full'), new PassThrough()).out }));
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(FULL);
    expect(err).not.toContain('    at ');
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
  /** Direction marks, the start of a terminal's orders, a bell. */
  const SIGNS = '\u202E\u200F\u2066\u001b[31m\u0007';
  const unseen = /[\u202A-\u202E\u2066-\u2069\u200E\u200F]|(?![\t\r\n])\p{Cc}/u;
  const file = `fielded: 1
title: "title${SIGNS.replaceAll(/./gu, (sign) => JSON.stringify(sign).slice(1, -1))}"
shop: hidden-shop.yaml
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: NAME, side: front, knife: KNIFE }
  - { name: back, side: back, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 }, head: HEAD }
doors:
  - { name: DOOR, width: 500, height: 800, stile: 60, rail: 70, head: { shape: arch, rise: 60 } }
`;
  const named = (text: string) =>
    text.replaceAll(/NAME|KNIFE|HEAD|DOOR|MACHINE/g, (word) => JSON.stringify(`${word}${SIGNS}`));
  const path = put(folder, 'hidden.yaml', named(file));
  const shopPath = put(
    folder,
    'hidden-shop.yaml',
    named(`fielded: 1
name: NAME
address: [NAME]
knives: { KNIFE: { shape: ogee, reach: 38, depth: 9, land: 11, head: HEAD, kept: NAME } }
heads: { HEAD: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 15, maxSpeed: 7000 } }
machines: { MACHINE: { speeds: [3000, 6000], seat: [-70, 90], opening: 220, nutDiameter: 48, feeds: [4] } }
rates: { currency: EUR, hour: 40, door: 1, tax: { name: NAME, rate: 19 }, terms: [NAME] }
`),
  );
  const quote = ['quote', path, '--draft', '--date', '2026-03-14', '--client', `client${SIGNS}`, '--number', SIGNS];

  it.each<[string[]]>([
    [['check', path]],
    [['plan', path]],
    [['plan', '--all', path]],
    [['match', path, '--cut', `NAME${SIGNS}`]],
    [['match', path, '--cut', `none${SIGNS}`]],
    [['knife', path, '--name', `none${SIGNS}`]],
    [['board', shopPath]],
    [['sample', path]],
    [['cutting-list', path]],
    [quote],
    [['template', path]],
    [['template', path, '--door', `none${SIGNS}`]],
    [['solve', path, '--for', 'clearance=0.3', '--by', `NAME${SIGNS}.depth`]],
    [['solve', path, '--for', 'clearance=0.3', '--by', `none${SIGNS}.depth`]],
    [['trace', `none${SIGNS}.png`]],
    [['draw', path, '--view', SIGNS]],
    [['help', SIGNS]],
    [['completion', SIGNS]],
    [[SIGNS]],
  ])('reach no terminal: %j', async (argv) => {
    const { out, err } = await run(argv);
    expect(out + err).not.toBe('');
    expect(out).not.toMatch(unseen);
    expect(err).not.toMatch(unseen);
  });

  it.each([
    ['plan', ['--json', path]],
    ['match', ['--json', path, '--cut', `NAME${SIGNS}`]],
    ['cutting-list', ['--json', path]],
    ['check', ['--json', path]],
  ])('are escaped in the JSON of %s', async (command, rest) => {
    const { out } = await run([command, ...rest]);
    expect(out).not.toMatch(unseen);
    expect(JSON.stringify(JSON.parse(out))).toContain(JSON.stringify(SIGNS).slice(1, -1));
  });

  it.each([
    ['plan.html', ['plan', path]],
    ['plan.svg', ['plan', path]],
    ['quote.html', quote],
    ['quote.csv', quote],
    ['list.csv', ['cutting-list', path]],
    ['knife.svg', ['knife', path, '--name', `NAME${SIGNS}`]],
    ['knife.dxf', ['knife', path, '--name', `NAME${SIGNS}`]],
    ['template.svg', ['template', path]],
    ['board.html', ['board', shopPath]],
  ])('stand in no %s, which runs no script', async (name, argv) => {
    const written = join(folder, name);
    const { err } = await run([...argv, '-o', written]);
    expect(existsSync(written), err).toBe(true);
    const text = readFileSync(written, 'utf8');
    expect(text).not.toMatch(unseen);
    expect(text).not.toMatch(/<script|javascript:|\son[a-z]+=/i);
  });
});
