// The first program in each package's README is run as printed, and prints what the README says it prints; so is the program of
// docs/library.md, given a job's text.
import { execFile } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, it } from 'vitest';
import * as core from '../../packages/core/src/index.ts';
import { evaluate, readJob } from '../../packages/core/src/index.ts';
import * as geometry from '../../packages/geometry/src/index.ts';
import * as render from '../../packages/render/src/index.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { version } = JSON.parse(readFileSync(join(root, 'packages/cli/package.json'), 'utf8'));

const NAMES = ['geometry', 'core', 'render', 'exchange', 'cli'];
const readmes = new Map(NAMES.map((name) => [name, readFileSync(join(root, 'packages', name, 'README.md'), 'utf8')]));
const guide = readFileSync(join(root, 'docs/library.md'), 'utf8');
const example = readFileSync(join(root, 'examples/ogee-cove/job.yaml'), 'utf8');
const programIn = (text: string) => /^```js\n([\s\S]*?)^```/m.exec(text)![1]!;
/** What each program prints, by the package that it stands beside. */
let printed: readonly string[] = [];
beforeAll(async () => {
  printed = await runBeside([
    ...[...readmes].map(([name, readme]) => ({ name, program: programIn(readme) })),
    { name: 'render', program: `const text = ${JSON.stringify(example)}, shops = {};\n${programIn(guide)}` },
  ]);
});

describe('the first program of', () => {
  it.each(NAMES)('@fielded/%s prints what its README says', (name) => {
    const says = /^prints (?:`([^`]+)`|the version)/m.exec(readmes.get(name)!)!;
    expect(printed[NAMES.indexOf(name)]).toBe(says[1] ?? version);
  });
});

describe('docs/library.md', () => {
  it('reads, evaluates and draws a job as it says', () => {
    const { fit } = evaluate(readJob(example).job!);
    expect(printed.at(-1)).toBe(`${fit.verdict} ${fit.clearance}`);
  });

  it('gives a bare drawing a size, no scripts, and letters that any system has', () => {
    const svg = render.draw(evaluate(readJob(example).job!), { view: 'section', bare: true });
    expect(svg).toMatch(/^<svg[^>]* width="[\d.]+mm" height="[\d.]+mm"/);
    expect(svg).not.toMatch(/<script|<style|@font-face|href/);
    expect(svg).toMatch(/font-family="[^"]*, sans-serif"/);
  });

  it('names only what the packages export', () => {
    const names = [...guide.matchAll(/`(\w+)(?:\(\w*\))?`/g)].map(([, name]) => name!);
    const exported = new Set([core, geometry, render].flatMap((all) => Object.keys(all)));
    const functions = names.filter((name) =>
      /^(answer|evaluate|prepare|read|draw|make|scene|offset|path|fit|curve)\w/.test(name),
    );
    expect(functions.length).toBeGreaterThan(15);
    expect(functions.filter((name) => !exported.has(name))).toEqual([]);
  });
});

/**
 * What each of these programs prints that stands in a package's folder, so that the package's own dependencies are the ones that
 * are found. One process runs them one after the other: what several of them import is then read once.
 */
async function runBeside(programs: readonly { name: string; program: string }[]): Promise<string[]> {
  const files = programs.map(({ name, program }, i) => {
    const file = join(root, 'packages', name, `first-program-${process.pid}-${i}.mjs`);
    writeFileSync(file, program);
    return file;
  });
  const end = '-- end of a program --';
  const all = files.map((file) => `await import('${pathToFileURL(file)}'); console.log('${end}');`).join('\n');
  try {
    const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', all]);
    return stdout.split(end, files.length).map((text) => text.trim());
  } finally {
    for (const file of files) rmSync(file);
  }
}
