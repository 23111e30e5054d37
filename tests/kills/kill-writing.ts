import { spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Wholes } from './kinds.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const script = join(root, 'tests/kills/keep-writing.mjs');

/** What stood there after a kill: which whole file, and whether the killed writer left a part beside it. */
export interface Outcome {
  readonly found: 'old' | 'new' | 'torn';
  readonly parts: number;
  /** What lies beside the file that is no part of it; nothing should. */
  readonly strange: readonly string[];
  /** Ended by the kill, not before it. */
  readonly killed: boolean;
}

/** The command's writer as a module of its own, built from the sources into a folder. */
export async function buildWriter(folder: string): Promise<string> {
  const { build } = await import('vite');
  const entry = join(root, 'packages/cli/src/files/write-whole.ts');
  await build({ configFile: false, logLevel: 'error', build: { ssr: entry, outDir: folder, emptyOutDir: false } });
  return join(folder, 'write-whole.js');
}

/** Has the old file and the new one written in turn, on a disk that rests, and kills the writer `after` ms. */
export async function killWriting(writer: string, wholes: Wholes, after: number): Promise<Outcome> {
  const argv = [script, writer, wholes.kind.file, ...wholes.paths];
  return judge(wholes, await killAfter(argv, after, true));
}

/** Runs the command itself over the old file, and kills it `after` ms. */
export async function killCommand(command: string, wholes: Wholes, after: number): Promise<Outcome> {
  return judge(wholes, await killAfter([command, ...wholes.kind.fresh], after, false));
}

/** Whether the process was still there to be killed; `after` counts from its first word, or from its start. */
function killAfter(argv: readonly string[], after: number, fromFirstWord: boolean): Promise<boolean> {
  const child = spawn(process.execPath, argv, { stdio: ['ignore', fromFirstWord ? 'pipe' : 'ignore', 'ignore'] });
  let timer: NodeJS.Timeout | undefined;
  const begin = () => {
    timer = setTimeout(() => child.kill('SIGKILL'), after);
  };
  if (child.stdout === null) begin();
  else child.stdout.once('data', begin);
  return new Promise((settle) =>
    child.on('close', (_, signal) => {
      clearTimeout(timer);
      settle(signal === 'SIGKILL');
    }),
  );
}

function judge({ kind, old, fresh }: Wholes, killed: boolean): Outcome {
  const now = existsSync(kind.file) ? readFileSync(kind.file) : null;
  const found = now === null ? 'torn' : now.equals(old) ? 'old' : now.equals(fresh) ? 'new' : 'torn';
  return { found, killed, ...beside(kind.file) };
}

/** What lies beside a file: parts of it that a killed writer left, by their names, and anything else. */
export function beside(file: string): Pick<Outcome, 'parts' | 'strange'> {
  const others = readdirSync(dirname(file)).filter((name) => name !== basename(file));
  const isPart = (name: string) => name.startsWith(`.${basename(file)}.`) && name.endsWith('.part');
  return { parts: others.filter(isPart).length, strange: others.filter((name) => !isPart(name)) };
}
