// The paper that a page prints on until another is chosen: as paperSize in the measurement data of Unicode CLDR, by region.
import { afterEach, expect, it, vi } from 'vitest';
import { usualPaper } from '../../packages/page/src/files/usual-paper.ts';

afterEach(() => vi.unstubAllGlobals());

it.each([
  ['en-US', 'letter'],
  ['fr-CA', 'letter'],
  ['es-MX', 'letter'],
  ['en-GB', 'a4'],
  ['zh-Hant-TW', 'a4'],
  ['de', 'a4'],
  ['en', 'a4'],
  ['C', 'a4'],
])('for %s is %s', (language, paper) => {
  vi.stubGlobal('navigator', { language });
  expect(usualPaper()).toBe(paper);
});
