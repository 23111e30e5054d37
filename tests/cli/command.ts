import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { type Io, main } from '../../packages/cli/src/index.ts';
import { builtCommand } from '../support/built-command.ts';

/** What a run of the command gave. */
export interface Run {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command in this process, with its output kept. */
export async function run(argv: readonly string[], streams: Partial<Io> = {}): Promise<Run> {
  let out = '';
  let err = '';
  const io: Io = {
    out: async (text) => {
      out += text;
    },
    err: async (text) => {
      err += text;
    },
    outIsTerminal: false,
    errIsTerminal: false,
    columns: 80,
    colour: false,
    stopped: () => Promise.resolve(),
    ...streams,
  };
  const status = await main(argv, io);
  return { status, out, err };
}

/** Runs the command as a process of its own. */
export async function spawnCommand(argv: readonly string[], pipe = ''): Promise<Run> {
  const node = `"${process.execPath}" "${await builtCommand()}" ${argv.map((word) => `'${word}'`).join(' ')}`;
  const child = spawn('bash', ['-c', `set -o pipefail; ${node}${pipe}`], { stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let err = '';
  child.stdout.setEncoding('utf8').on('data', (text) => {
    out += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text) => {
    err += text;
  });
  return new Promise((settle) => child.on('close', (status) => settle({ status: status ?? -1, out, err })));
}

/** A folder for one test file, gone afterwards. */
export function makeFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Writes a file into a folder and gives its path. */
export function put(folder: string, name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** A written SVG or HTML without the comment that says who wrote it. */
export function withoutMark(text: string): string {
  return text.replace(/<!-- made by fielded \[[0-9a-f]{12}\] -->\n$/, '');
}
