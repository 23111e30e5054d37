// The first program in each package's README is run as printed, and prints what the README says it prints; so is the program of
// docs/library.md, given a job's text.
import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import * as core from '../../packages/core/src/index.ts';
import { evaluate, readJob } from '../../packages/core/src/index.ts';
import * as geometry from '../../packages/geometry/src/index.ts';
import * as render from '../../packages/render/src/index.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { version } = JSON.parse(readFileSync(join(root, 'packages/cli/package.json'), 'utf8'));

describe('the first program of', () => {
  it.each(['geometry', 'core', 'render', 'exchange', 'cli'])('@fielded/%s prints what its README says', (name) => {
    const readme = readFileSync(join(root, 'packages', name, 'README.md'), 'utf8');
    const program = /^```js\n([\s\S]*?)^```/m.exec(readme)![1]!;
    const says = /^prints (?:`([^`]+)`|the version)/m.exec(readme)!;
    expect(runBeside(name, program)).toBe(says[1] ?? version);
  });
});

describe('docs/library.md', () => {
  const guide = readFileSync(join(root, 'docs/library.md'), 'utf8');
  const program = /^```js\n([\s\S]*?)^```/m.exec(guide)![1]!;
  it('reads, evaluates and draws a job as it says', () => {
    const text = readFileSync(join(root, 'examples/ogee-cove/job.yaml'), 'utf8');
    const { fit } = evaluate(readJob(text).job!);
    expect(runBeside('render', `const text = ${JSON.stringify(text)}, shops = {};\n${program}`)).toBe(
      `${fit.verdict} ${fit.clearance}`,
    );
  });

  it('gives a bare drawing a size, no scripts, and letters that any system has', () => {
    const text = readFileSync(join(root, 'examples/ogee-cove/job.yaml'), 'utf8');
    const svg = render.draw(evaluate(readJob(text).job!), { view: 'section', bare: true });
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

/** What a program prints that stands in a package's folder, so that the package's own dependencies are the ones that are found. */
function runBeside(name: string, program: string): string {
  const file = join(root, 'packages', name, `first-program-${process.pid}.mjs`);
  writeFileSync(file, program);
  try {
    return execFileSync(process.execPath, [file], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] }).trim();
  } finally {
    rmSync(file);
  }
}
