import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { COMMANDS } from '../../packages/cli/src/commands.ts';
import { type Io, main } from '../../packages/cli/src/index.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const example = (name: string) => join(examples, name, 'job.yaml');

/** A kind of file that the command writes: what is run for the old one and for the new one over it, `-o` and its file left out. */
export interface Kind {
  readonly name: string;
  readonly file: string;
  /** What the file holds before; null where the first run of the command writes it. */
  readonly before: string | null;
  readonly old: readonly string[] | null;
  readonly fresh: readonly string[];
}

/** What each command that has formats is run on: two different files. */
const RUNS: Readonly<Record<string, readonly [readonly string[], readonly string[]]>> = {
  draw: [[example('ogee-cove')], [example('bead-on-edge')]],
  'cutting-list': [[example('kitchen')], [example('wardrobe')]],
  quote: [
    [example('kitchen'), '--date', '2026-03-14', '--number', '1'],
    [example('wardrobe'), '--date', '2026-03-14', '--number', '2'],
  ],
  template: [
    [example('wardrobe'), '--door', 'arched', '--part', 'panel'],
    [example('wardrobe'), '--door', 'cathedral', '--part', 'panel'],
  ],
  knife: [
    [join(examples, 'shop/shop.yaml'), '--name', 'ogee-38'],
    [join(examples, 'shop/shop.yaml'), '--name', 'bevel-36'],
  ],
  trace: [[join(examples, 'traced-sample/sample.png')], [join(examples, 'traced-sample/sample.png'), '--dpi', '400']],
  match: [
    [example('kitchen'), '--cut', 'raise'],
    [example('kitchen'), '--cut', 'back relief'],
  ],
  plan: [[example('two-machines')], [example('kitchen')]],
  sample: [[example('ogee-cove')], [example('bead-on-edge')]],
  board: [[join(examples, 'shop/shop.yaml')], [join(examples, 'shop/shop.yaml'), '--title', 'Another title']],
};

/**
 * Every kind of file that the command writes: each command with each of its formats, as its table has them, and the two that write
 * values back into a job. A command with formats that is not in `RUNS` is an error.
 */
export async function listKinds(folder: string): Promise<Kind[]> {
  const kinds: Kind[] = [];
  for (const [name, load] of Object.entries(COMMANDS)) {
    const { formats = [] } = await load();
    for (const format of formats) {
      const runs = RUNS[name];
      if (runs === undefined) throw new Error(`say in RUNS what ${name} is run on`);
      const file = join(folder, `${name}${format}`, `${name}${format}`);
      const [old, fresh] = runs.map((given) => [name, ...given, '--force', '-o', file]) as [string[], string[]];
      kinds.push({ name: `${name} ${format}`, file, before: null, old, fresh });
    }
  }
  return [...kinds, solveKind(folder), planKind(folder)];
}

/** A clearance that is solved for, written into the job. */
function solveKind(folder: string): Kind {
  const file = join(folder, 'solve/job.yaml');
  const fresh = ['solve', file, '--for', 'clearance=0.3', '--by', 'back relief.depth', '--write'];
  return { name: 'solve --write', file, before: readFileSync(example('ogee-cove'), 'utf8'), old: null, fresh };
}

/** A run that the plan proposes, since the spindle of the large machine does not go down far enough, written into the job. */
function planKind(folder: string): Kind {
  const file = join(folder, 'plan/job.yaml');
  const shop = readFileSync(join(examples, 'two-machines/shop.yaml'), 'utf8');
  const low = shop.replace('seat: [-60, 100]', 'seat: [-25, 100]');
  if (low === shop) throw new Error('the example has another seat');
  mkdirSync(join(folder, 'plan-shop'), { recursive: true });
  const path = join(folder, 'plan-shop/shop.yaml');
  writeFileSync(path, low);
  const before = readFileSync(example('two-machines'), 'utf8');
  return { name: 'plan --write', file, before, old: null, fresh: ['plan', file, '--shop', path, '--write'] };
}

/** A kind with the two files that may ever stand in its place, as files of their own. */
export interface Wholes {
  readonly kind: Kind;
  readonly old: Buffer;
  readonly fresh: Buffer;
  readonly paths: readonly [old: string, fresh: string];
}

/** Runs the command twice in this process, and keeps what it wrote. */
export async function makeWholes(kind: Kind, aside: string): Promise<Wholes> {
  mkdirSync(join(kind.file, '..'), { recursive: true });
  if (kind.before !== null) writeFileSync(kind.file, kind.before);
  const made = [kind.old, kind.fresh].map((argv) => async () => {
    if (argv !== null) await runQuietly(argv);
    return readFileSync(kind.file);
  });
  const [old, fresh] = [await made[0]!(), await made[1]!()];
  if (old.equals(fresh))
    throw new Error(`${kind.name}: the old file and the new one are alike, so that nothing can be seen`);
  const name = kind.name.replaceAll(/\W+/g, '-');
  const paths = [join(aside, `${name}-old`), join(aside, `${name}-new`)] as const;
  writeFileSync(paths[0], old);
  cpSync(kind.file, paths[1]);
  return { kind, old, fresh, paths };
}

async function runQuietly(argv: readonly string[]): Promise<void> {
  let said = '';
  const keep = async (text: string) => {
    said += text;
  };
  const io: Io = {
    out: keep,
    err: keep,
    outIsTerminal: false,
    errIsTerminal: false,
    columns: 80,
    colour: false,
    stopped: () => Promise.resolve(),
  };
  const status = await main(argv, io);
  if (status > 1) throw new Error(`fielded ${argv.join(' ')}: ${status}\n${said}`);
}
