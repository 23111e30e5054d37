// Every command and every job file that the README and the docs print is run or read as printed.
import { cpSync, existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readJob, readShop } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { makeFolder, run } from './command.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const PAGES = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(root, 'docs'))
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`),
];

function blocks(language: string): { page: string; text: string }[] {
  return PAGES.flatMap((page) =>
    [
      ...readFileSync(join(root, page), 'utf8').matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, 'gm')),
    ].map((found) => ({
      page,
      text: found[1]!,
    })),
  );
}

const commands = blocks('sh').flatMap(({ page, text }) =>
  text
    .split('\n')
    .filter((line) => line.startsWith('npx fielded '))
    .map((line) => ({ page, line })),
);
const scripts = blocks('sh').flatMap(({ text }) =>
  [...text.matchAll(/npm (?:run )?([a-z:]+)/g)].map(([, name]) => name!),
);

describe('commands that are printed', () => {
  const folder = makeFolder();
  cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true });

  it.each(commands)('$page: $line', async ({ line }) => {
    // Paths are put into a folder of the test's own, in place of the current one.
    const words = line
      .split(/\s+/)
      .slice(2)
      .map((word) => (/^examples\/|\.(svg|pdf|png|html|dxf|csv|yaml|docx)$/.test(word) ? join(folder, word) : word));
    // `open` serves until it is stopped: here at once, and with no browser asked for.
    const { status, err } = await run(words[0] === 'open' ? [...words, '--no-browser'] : words);
    // A joint that does not go together is drawn all the same, with status 1.
    const wedges = line.includes('bevel-wedge');
    expect(status, err).toBe(wedges ? 1 : 0);
    const output = words[words.indexOf('-o') + 1];
    if (words.includes('-o')) expect(existsSync(output!)).toBe(true);
  });

  it('are many, and every npm script among them exists', () => {
    expect(commands.length).toBeGreaterThan(10);
    const known = Object.keys(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).scripts);
    expect(scripts.filter((name) => !['ci', ...known].includes(name))).toEqual([]);
  });
});

describe('files that are printed', () => {
  const whole = blocks('yaml').filter(({ text }) => text.includes('fielded: 1'));

  it.each(whole.map(({ page, text }, i) => ({ page, i, text })))(
    '$page, number $i, reads without a fault',
    ({ text }) => {
      const isShop = /^(knives|heads|machines):/m.test(text);
      const shop = readFileSync(join(root, 'examples/shop/shop.yaml'), 'utf8');
      expect((isShop ? readShop(text) : readJob(text, { loadShop: () => shop })).faults).toEqual([]);
    },
  );

  it('are some', () => {
    expect(whole.length).toBeGreaterThan(0);
  });
});
