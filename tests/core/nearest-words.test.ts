// The word that was meant, against distances by their definition: every way to edit one word into another is tried.
import { describe, expect, it } from 'vitest';
import { findNearest } from '../../packages/core/src/reading/nearest.ts';
import { Random } from '../support/random.ts';

/** Fewest letters put in, left out, changed or swapped with their neighbour, by trying each at the front of both words. */
function editsBetween(from: string, to: string): number {
  const known = new Map<string, number>();
  const edits = (i: number, j: number): number => {
    if (i === from.length || j === to.length) return from.length - i + to.length - j;
    const key = `${i} ${j}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const swapped = i + 1 < from.length && j + 1 < to.length && from[i] === to[j + 1] && from[i + 1] === to[j];
    const least = Math.min(
      edits(i + 1, j + 1) + (from[i] === to[j] ? 0 : 1),
      1 + edits(i + 1, j),
      1 + edits(i, j + 1),
      ...(swapped ? [1 + edits(i + 2, j + 2)] : []),
    );
    known.set(key, least);
    return least;
  };
  return edits(0, 0);
}

describe('the word that was meant', () => {
  const random = new Random(101);
  // Few letters, so that words are near each other and letters are swapped.
  const word = (least: number, most: number) =>
    Array.from({ length: Math.round(random.between(least, most)) }, () => random.oneOf([...'zqxv'])).join('');

  it('is the first of those with the fewest edits, if a third of its letters at most are wrong', () => {
    let [found, none] = [0, 0];
    for (let i = 0; i < 150; i++) {
      const known = Array.from({ length: 6 }, () => word(2, 12));
      const typed = word(2, 12);
      const room = typed.length < 5 ? 1 : typed.length < 9 ? 2 : Math.floor(typed.length / 3);
      const near = known
        .map((name) => ({ name, away: editsBetween(typed, name) }))
        .filter(({ name, away }) => away <= room && away < Math.min(name.length, typed.length));
      const least = Math.min(...near.map(({ away }) => away));
      expect(findNearest(typed, known), `${typed} of ${known}`).toBe(near.find(({ away }) => away === least)?.name);
      if (near.length > 0) found++;
      else none++;
    }
    expect(found).toBeGreaterThan(5);
    expect(none).toBeGreaterThan(20);
  });

  it('is not told by case, and a maker’s own word stands for the one of the files', () => {
    expect(findNearest('THICKNES', ['thickness', 'measured'])).toBe('thickness');
    expect(findNearest('Rabbet', ['rebate', 'bevel'])).toBe('rebate');
    expect(findNearest('rabbet', ['bevel'])).toBeUndefined();
    expect(findNearest('size', ['stile'])).toBeUndefined();
  });
});
