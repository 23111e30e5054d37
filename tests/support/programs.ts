import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** Programs that drawings are shown or measured with, and the Debian package each comes in. */
const PACKAGES = {
  chromium: 'chromium',
  'chromium-headless-shell': 'chromium-headless-shell',
  'rsvg-convert': 'librsvg2-bin',
  pdftoppm: 'poppler-utils',
  pdftotext: 'poppler-utils',
  pdfimages: 'poppler-utils',
  soffice: 'libreoffice-draw libreoffice-writer',
  zsh: 'zsh',
  fish: 'fish',
} as const;

export type Program = keyof typeof PACKAGES;

/**
 * Settings of the GNU C library, by which a program keeps the memory that it has had. One that paints gives back and takes a picture's
 * memory again and again, which the system clears each time: that takes a third of LibreOffice's processor time.
 */
const KEEPS_MEMORY = { MALLOC_MMAP_THRESHOLD_: '1000000000', MALLOC_TRIM_THRESHOLD_: '4000000000' };

/**
 * Runs a program from outside the project. One that is missing is installed on Debian as root; elsewhere the error says what
 * to get. A check that cannot be made fails: it is not passed over.
 */
export function runProgram(program: Program, args: readonly string[], folder?: string): Buffer {
  if (pathOf(program) === null) install(program);
  return execFileSync(program, args, {
    maxBuffer: 1 << 28,
    stdio: ['ignore', 'pipe', 'pipe'],
    timeout: 120_000,
    // A program that is run in a folder has its settings there too, not those of whoever runs the tests.
    env: { ...process.env, ...KEEPS_MEMORY, ...(folder !== undefined && { HOME: folder }) },
    ...(folder !== undefined && { cwd: folder }),
  });
}

/** Where programs stand that were found. */
const found = new Map<Program, string>();

/** Where a program stands, or null. */
function pathOf(program: Program): string | null {
  const known = found.get(program);
  if (known !== undefined) return known;
  const { status, stdout } = spawnSync('sh', ['-c', `command -v ${program}`], { encoding: 'utf8' });
  if (status !== 0) return null;
  found.set(program, stdout.trim());
  return stdout.trim();
}

/**
 * The browser that tests run: Chromium built without a window, which takes half the processor's time, or else the one of a
 * desktop. Where neither is there the first is installed, or the second on systems that have no package of the first.
 */
export function findBrowser(): { readonly program: Program; readonly path: string } {
  for (const program of ['chromium-headless-shell', 'chromium'] as const) {
    const path = pathOf(program);
    if (path !== null) return { program, path };
  }
  try {
    install('chromium-headless-shell');
  } catch {
    install('chromium');
  }
  return findBrowser();
}

function install(program: Program): void {
  const name = PACKAGES[program];
  const root = process.getuid?.() === 0;
  if (!root || spawnSync('sh', ['-c', 'command -v apt-get']).status !== 0)
    throw new Error(`This test needs ${program}. Install it: on Debian and Ubuntu it is in ${name}.`);
  // Several test files may find something missing at once; the lock lets one install after the other.
  const command = `apt-get update -qq; DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends ${name} fonts-dejavu-core`;
  execFileSync('flock', ['/tmp/fielded-tests-install.lock', 'sh', '-c', command], {
    stdio: 'ignore',
    timeout: 600_000,
  });
}

/** Chromium without a window; it keeps its data in the folder given. */
export function runChromium(folder: string, args: readonly string[]): void {
  const common = [
    '--headless',
    '--no-sandbox',
    '--disable-gpu',
    '--hide-scrollbars',
    `--user-data-dir=${join(folder, 'chromium')}`,
  ];
  runProgram(findBrowser().program, [...common, ...args]);
}

/** A folder for one test file, removed when it is done. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fielded-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
}
