import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { attempt, fetchPart } from '../../packages/page/src/desk/fetch-part.ts';
import type { Notice } from '../../packages/page/src/desk/notice.ts';
import { loadPart } from '../../packages/render/src/load-part.ts';

const PAGE = 'packages/page/src';
const newDesk = () => ({ notice: { value: { text: '', kind: 'note' } as Notice } });

it('says that a part is missing, and does the whole act again when asked', async () => {
  const desk = newDesk();
  const answers = [Promise.reject(new Error('offline')), Promise.resolve(7)];
  const got: number[] = [];
  const act = async () => void got.push(await fetchPart(() => answers.shift()!));
  expect(await attempt(desk, act, { missing: 'The saw is missing.' })).toBe(false);
  expect(desk.notice.value).toMatchObject({
    kind: 'fault',
    text: 'The saw is missing.',
    action: { name: 'Try again' },
  });
  desk.notice.value.action!.run();
  await expect.poll(() => got).toEqual([7]);
  expect(desk.notice.value.text).toBe('');
});

it('says another fault in its own words, with nothing to fetch again', async () => {
  const desk = newDesk();
  const fail = () => Promise.reject(new Error('No paper is so large.'));
  expect(await attempt(desk, fail)).toBe(false);
  expect(desk.notice.value).toEqual({ kind: 'fault', text: 'That could not be made: No paper is so large.' });
  await attempt(desk, fail, { fault: () => 'It is kept.' });
  expect(desk.notice.value.text).toBe('It is kept.');
});

it('takes a missing part of what draws for one too, whatever the browser says of it', async () => {
  const desk = newDesk();
  const gone = () => Promise.reject(new TypeError('no such file'));
  await attempt(desk, () => loadPart(gone));
  expect(desk.notice.value.action?.name).toBe('Try again');
});

it('is how every part of the page is fetched', () => {
  const files = readdirSync(PAGE, { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));
  // Only what stands shortly before each is searched: to try every place of the page's files takes a hundred times as long.
  const imports = files.flatMap((name) => {
    const text = readFileSync(join(PAGE, name), 'utf8');
    return [...text.matchAll(/\bimport\(/g)].map(({ index }) => ({
      name,
      before: /.{0,40}\s*$/.exec(text.slice(Math.max(0, index - 200), index))![0],
    }));
  });
  expect(imports.length).toBeGreaterThan(20);
  // What `Later` shows is handed to it as a function, those of the frame by their place; it fetches that itself.
  const known = /fetchPart\(\s*\(\) =>\s*$|typeof $|^const load\w+ = \(\) => $/;
  const byPlace = /^ {2}(?:\w+|'[\w-]+'): \(\) => $/;
  const handed = ({ name, before }: (typeof imports)[number]) =>
    known.test(before!) || (name === join('shell', 'app.tsx') && byPlace.test(before!));
  expect(imports.filter((each) => !handed(each))).toEqual([]);
});
