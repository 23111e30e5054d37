import { evaluate, type GivenJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { ALL_ENGLISH } from '../../packages/core/src/problem/all-english.ts';
import { phraseIn } from '../../packages/core/src/problem/phrase.ts';
import type { Figures } from '../../packages/core/src/problem/problem.ts';
import { Random } from '../support/random.ts';

const IN_ENGLISH = { language: { sentences: {}, decimal: '.' }, english: ALL_ENGLISH } as const;
const write = (sentence: string, figures: Record<string, number>, units: 'mm' | 'in' = 'mm') =>
  phraseIn(sentence, figures, { units }, IN_ENGLISH);

describe('figures of one sentence', () => {
  it.each([
    [10, 9.996, 'mm', '10 mm and 9.996 mm'],
    [10, 9.99996, 'mm', '10 mm and 9.99996 mm'],
    [10, 9.9, 'mm', '10 mm and 9.9 mm'],
    [10, 10, 'mm', '10 mm and 10 mm'],
    [10, 10 + 1e-13, 'mm', '10 mm and 10 mm'],
    [6.001, 6.004, 'mm', '6.001 mm and 6.004 mm'],
    [25.4, 25.3995, 'in', '1 in and ≈1 in (0.99998 in)'],
    [25.4, 25.39, 'in', '1 in and ≈1 in (0.9996 in)'],
    [5.159375, 5.1595, 'in', '13/64 in and ≈13/64 in (0.20313 in)'],
    [0.0042, 0, 'mm', '0.004 mm and 0 mm'],
    [0.0004, 0, 'mm', 'under 0.001 mm and 0 mm'],
    [0.0004, 0, 'in', 'under 0.00004 in and 0 in'],
  ] as const)('are written apart where they differ: %s and %s %s', (a, b, units, shown) => {
    expect(write('{a:length} and {b:length}', { a, b }, units)).toBe(shown);
  });

  it('are held against those of their own kind alone', () => {
    expect(write('{a:degrees} under {b:degrees}, {c:length}', { a: 9.96, b: 10, c: 9.999 })).toBe(
      '9.96° under 10°, 10 mm',
    );
    expect(write('slope by {a:degrees}', { a: 0.004 })).toBe('slope by 0.004°');
  });

  it('differ in print in every sentence of the catalogue, however near they are', () => {
    const random = new Random(17);
    const alike: string[] = [];
    const pairs = Object.values(ALL_ENGLISH).flatMap(comparedIn);
    for (const { sentence, one, other } of pairs) {
      const value = 1 + Math.round(random.between(0, 4000)) / 100;
      const figures = { ...fillers(sentence), [one.name]: value, [other.name]: value + 10 ** random.between(-6, -1) };
      const voice = { units: random.oneOf(['mm', 'in'] as const) };
      const words = phraseIn(`${one.place}|${other.place}|${sentence}`, figures, voice, IN_ENGLISH);
      const [first, second] = words.split('|');
      if (first === second) alike.push(words);
    }
    expect(pairs.length).toBeGreaterThan(100);
    expect(alike).toEqual([]);
  });
});

/** Every two figures of a sentence that are of one kind. */
function comparedIn(sentence: string) {
  const numbers = [...sentence.matchAll(/\{(\w+):(length|coarse|degrees|percent|number|area)\}/g)].map(
    ([place, name, kind]) => ({ place, name: name!, kind: kind === 'coarse' ? 'length' : kind }),
  );
  return numbers.flatMap((one, k) =>
    numbers
      .slice(0, k)
      .filter(({ name, kind }) => name !== one.name && kind === one.kind)
      .map((other) => ({ sentence, one, other })),
  );
}

/** Something for every place of a sentence. */
function fillers(sentence: string): Figures {
  return Object.fromEntries(
    [...sentence.matchAll(/\{(\w+)(?::(\w+))?\}/g)].map(([, name, kind]) => [name, filler(kind)]),
  );
}

function filler(kind: string | undefined): Figures[string] {
  if (kind === undefined || kind === 'path') return 'x';
  if (kind === 'said') return { sentence: 'held.flat', figures: {} };
  if (kind === 'spans') return [[1000, 1100]];
  return kind === 'list' ? [] : 500;
}

describe('a length before the word in', () => {
  it('stands nowhere in the catalogue: in inches it would read "1/2 in in"', () => {
    const twice = Object.values(ALL_ENGLISH).filter((sentence) =>
      /:(?:length|coarse|spans)\} in\b(?! the (?:wood|frame|groove)\b)/.test(sentence),
    );
    expect(twice).toEqual([]);
  });
});

describe('a joint just past a limit', () => {
  const job: GivenJob = {
    panel: { thickness: 20 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2, endGap: 1 },
    cuts: [
      { name: 'raise', side: 'front', profile: { shape: 'bevel', reach: 38, depth: 9, land: 9.998 } },
      { name: 'back', side: 'back', profile: { shape: 'rebate', reach: 14, depth: 4.6 } },
    ],
    doors: [{ name: 'a', width: 400, height: 600, stile: 60, rail: 60 }],
  };

  it('says by how little the ends stop short', () => {
    const ends = evaluate(job).problems.find(({ code }) => code === 'ends-stop-short');
    expect(ends?.message).toMatch(
      /^At its ends the panel is meant to go in 10 mm, and the tongue stops at 9\.998 mm\./,
    );
  });

  it('says it in inches too', () => {
    const ends = evaluate({ ...job, units: 'in' }).problems.find(({ code }) => code === 'ends-stop-short');
    const [, wanted, deepest] = /meant to go in (.+?), and the tongue stops at (.+?)\. Leave/.exec(ends!.message)!;
    expect(wanted).not.toBe(deepest);
  });
});
