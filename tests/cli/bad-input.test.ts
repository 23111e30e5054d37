import { mkdirSync, readdirSync, symlinkSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { broken, SOUND } from '../core/job-texts.ts';
import { makeFolder, put, run, spawnCommand } from './command.ts';

const folder = makeFolder();
const sound = put(folder, 'sound.yaml', SOUND);

/** Standard error of a run that must give nothing else and exit with 2; the folder's own path is left out. */
async function refusal(...argv: string[]): Promise<string> {
  const { status, out, err } = await run(argv);
  expect({ status, out }).toEqual({ status: 2, out: '' });
  return err.replaceAll(`${folder}/`, '');
}

describe('files that are no job', () => {
  it.each([
    ['missing', 'missing.yaml', undefined, 'There is no such file. Check the name and the folder.'],
    [
      'binary',
      'binary.yaml',
      new Uint8Array([0x89, 0x50, 0, 1]),
      'The file is not text. Name a job file: YAML or JSON in UTF-8.',
    ],
    ['UTF-16', 'utf16.yaml', new Uint8Array([0xff, 0xfe, 0x66, 0]), 'The file is in UTF-16. Save it as UTF-8.'],
    ['Latin-1', 'latin.yaml', new Uint8Array([0x66, 0xe9, 0x0a]), 'The file is not in UTF-8. Save it as UTF-8.'],
    ['empty', 'empty.yaml', '', 'The file is empty. Start from one of the examples, or from docs/job-file.md.'],
  ])('one plain line for a %s file', async (_, name, content, line) => {
    if (content !== undefined) put(folder, name, content);
    expect(await refusal('check', join(folder, name))).toBe(`${name}  ${line}\n`);
  });

  it('refuses a file of 50 MB without reading it', async () => {
    const big = put(folder, 'big.yaml', '');
    truncateSync(big, 50_000_000);
    const began = performance.now();
    expect(await refusal('check', big)).toBe(
      'big.yaml  The file is 50 MB, and files up to 1 MB are read. Check that this is the right file.\n',
    );
    expect(performance.now() - began).toBeLessThan(200);
  });

  it('reads a file with a byte order mark', async () => {
    const marked = put(folder, 'marked.yaml', `\uFEFF${SOUND}`);
    expect((await run(['check', marked])).err).toBe('');
  });

  it('lists all faults of a file, each on its line', async () => {
    const job = put(
      folder,
      'faulty.yaml',
      broken('thickness: 20', 'thickness: -3').replace('side: back', 'side: rear'),
    );
    expect(await refusal('check', job)).toBe(
      'faulty.yaml:4:14  panel.thickness: -3 is too small. Write a thickness above 0, at most 10 m.\n' +
        'faulty.yaml:15:11  cuts[1].side: rear is not known. Did you mean back? Write one of front, back.\n',
    );
  });

  it('shows no control characters of a file to the terminal', async () => {
    const job = put(
      folder,
      'escape.yaml',
      broken('title: Test', 'title: "\\e[2J"').replace('run: under', 'run: "\\e[31m"'),
    );
    expect(await refusal('check', job)).not.toContain('\u001B');
    const title = put(folder, 'title.yaml', broken('title: Test', 'title: "\\e[2JDoors"'));
    expect((await run(['check', title])).out).toMatch(/^�\[2JDoors\n/);
  });
});

describe('shop files', () => {
  const withShop = (path: string) => broken('title: Test', `shop: ${path}`);
  mkdirSync(join(folder, 'jobs', 'shops'), { recursive: true });
  const jobs = join(folder, 'jobs');
  put(folder, 'outside.yaml', 'fielded: 1\n');
  put(jobs, 'shop.yaml', 'fielded: 1\n');
  symlinkSync(join(folder, 'outside.yaml'), join(jobs, 'link.yaml'));

  it.each([
    ['missing', './none.yaml', 'there is no such file. Check the name and the folder.'],
    ['a folder', './shops', 'this is a folder, not a file. Name the file in it.'],
    [
      'above the job',
      '../outside.yaml',
      "the file lies outside the job's folder. Move it beside the job, or give it on the command line with --shop.",
    ],
    [
      'anywhere on the disk',
      '/etc/hostname',
      "it is named from the root of a disk. Name it as seen from the job's folder, such as hostname.",
    ],
    [
      'a link that leads outside',
      './link.yaml',
      "the file lies outside the job's folder. Move it beside the job, or give it on the command line with --shop.",
    ],
  ])('refuses one that is %s', async (_, path, words) => {
    const job = put(jobs, 'job.yaml', withShop(path));
    expect(await refusal('check', job)).toBe(`jobs/job.yaml:2:7  shop: ${path}: ${words}\n`);
  });

  it.each(['/etc/thumb.dxf', 'C:\\thumb.dxf', '\\\\server\\shapes\\thumb.dxf'])(
    'says of a drawing that is named %s that its name starts at a disk',
    async (path) => {
      const cut = broken(/profile: .*ogee.*/.exec(SOUND)![0], `profile: { shape: outline, file: '${path}' }`);
      expect(await refusal('check', put(jobs, 'job.yaml', cut))).toContain(
        `profile.file: ${path}: it is named from the root of a disk. Name it as seen from the job's folder, such as thumb.dxf.\n`,
      );
    },
  );

  it('takes one from outside on the command line, and names it in its faults', async () => {
    const job = put(jobs, 'job.yaml', withShop('../outside.yaml'));
    expect((await run(['check', job, '--shop', join(folder, 'outside.yaml')])).err).toBe('');
    const bad = put(folder, 'bad-shop.yaml', 'fielded: 1\nhead: {}\n');
    expect(await refusal('check', job, '--shop', bad)).toMatch(
      /^bad-shop\.yaml:2:1 {2}head is no key of this file\. Did you mean heads\? Known here: fielded, units, knives, [a-zA-Z, ]+\.\n$/,
    );
    expect(await refusal('check', job, '--shop', join(folder, 'none.yaml'))).toBe(
      'none.yaml  There is no such file. Check the name and the folder.\n',
    );
  });

  it('names a shop file of the job by its path from here', async () => {
    put(jobs, 'bad.yaml', 'fielded: 1\nrules: { kerf: wide }\n');
    const job = put(jobs, 'job.yaml', withShop('./bad.yaml'));
    expect(await refusal('check', job)).toBe(
      'jobs/bad.yaml:2:16  rules.kerf: wide is not a length. Write a figure and its unit, such as 19 mm or 3/4 in.\n',
    );
  });
});

describe('a shop file given as a job', () => {
  it.each(['check', 'draw'])('is said to be one by %s', async (command) => {
    expect(await refusal(command, 'examples/shop/shop.yaml')).toBe(
      'examples/shop/shop.yaml  This is a shop file, not a job. Name a job here: it names the shop file with shop:, or --shop gives it one; fielded knife and fielded board read a shop file itself.\n',
    );
  });
});

describe('a job given as a shop file', () => {
  it.each([
    [['board', 'examples/shop/job.yaml']],
    [['check', 'examples/ogee-cove/job.yaml', '--shop', 'examples/shop/job.yaml']],
  ])('is said to be one by %s', async (args) => {
    expect(await refusal(...args)).toBe(
      'examples/shop/job.yaml  This is a job, not a shop file. Name the file with heads, knives and machines here: the one that the job has under shop:.\n',
    );
  });
});

describe('wrong use', () => {
  it.each([
    [['chekc', 'a.yaml'], 'chekc is no command. Did you mean check? See fielded --help.'],
    [['--verson'], '--verson is no option. Did you mean --version? See fielded --help.'],
    [['check'], 'check needs a job file, or a folder of them. See fielded help check.'],
    [['check', 'a.yaml', '--jsn'], '--jsn is no option here. Did you mean --json? See fielded help check.'],
    [['check', 'a.yaml', '--json=yes'], '--json takes no value. See fielded help check.'],
    [['check', 'a.yaml', '--json', '--json'], '--json is given twice. Give it once.'],
    [['check', 'a.yaml', '--shop'], '--shop needs a value after it. See fielded help check.'],
    [['draw'], 'draw needs a job file. See fielded help draw.'],
    [['draw', 'a.yaml', 'b.yaml'], 'draw takes one job at a time. See fielded help draw.'],
    [
      ['draw', 'a.yaml', '--view', 'jont'],
      '--view jont is not known. Did you mean joint? There are joint, section, detail, cuts, corner, panel, door, sheet, spread and season.',
    ],
    [['help', 'drw'], 'drw is no command. Did you mean draw? See fielded --help.'],
  ])('%j', async (argv, line) => {
    expect(await refusal(...argv)).toBe(`fielded: ${line}\n`);
  });
});

describe('fielded draw', () => {
  it('writes nothing for a job that cannot be read', async () => {
    const job = put(folder, 'nothing.yaml', 'fielded: 1\n');
    const target = join(folder, 'none', 'x.svg');
    expect(await refusal('draw', job, '-o', target)).toContain('nothing.yaml:1:1  panel is missing.');
    expect(readdirSync(folder)).not.toContain('none');
  });

  it('says where it cannot write, and leaves nothing behind', async () => {
    mkdirSync(join(folder, 'taken.svg'));
    expect(await refusal('draw', sound, '-o', join(folder, 'taken.svg'))).toBe(
      'taken.svg  This is a folder, not a file. Name the file to write in it.\n',
    );
    expect(await refusal('draw', sound, '-o', join(folder, 'sound.yaml', 'x.svg'))).toBe(
      'sound.yaml/x.svg  A part of the path is a file, not a folder. Choose another place.\n',
    );
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
    expect(readdirSync(join(folder, 'taken.svg'))).toEqual([]);
  });
});

it('prints no stack trace from a process of its own', async () => {
  const job = put(folder, 'slip.yaml', broken('reach: 14', 'reach: 10'));
  const { status, out, err } = await spawnCommand(['check', job]);
  expect({ status, out }).toEqual({ status: 2, out: '' });
  expect(err.replaceAll(`${folder}/`, '')).toBe(
    'slip.yaml:16:14  cuts[1].profile: the cove rises 4.6 mm (depth less shoulder) over a run of 1 mm (reach less land), and past a quarter circle the arc turns under. Give it 13.6 mm of reach, or take the depth down to 1 mm.\n',
  );
});
