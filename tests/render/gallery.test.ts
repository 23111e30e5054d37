import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeGallery } from '../../packages/render/tools/gallery.ts';

const root = join(import.meta.dirname, '../..');
const gallery = makeGallery();

test.each([...gallery.keys()])('%s is what the tool draws today', (path) => {
  expect(existsSync(join(root, path)), 'run npm run drawings').toBe(true);
  expect(readFileSync(join(root, path), 'utf8') === gallery.get(path), 'run npm run drawings').toBe(true);
});

test('nothing lies beside the drawings that the page does not show', () => {
  const shown = [...gallery.keys()].filter((path) => path.endsWith('.svg')).map((path) => path.split('/').at(-1));
  expect(readdirSync(join(root, 'docs/images/drawings')).sort()).toEqual(shown.sort());
});
