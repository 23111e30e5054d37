// Commands of path data written out, against svgpath's own `abs` and `unshort`.
import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { drawPath } from '../../packages/core/src/profile/draw-path.ts';
import { takeApart, writeOut } from '../../packages/core/src/profile/path-commands.ts';

const number = fc.integer({ min: -400, max: 400 }).map((n) => n / 8);
const command = fc
  .constantFrom(
    'M2',
    'L2',
    'H1',
    'V1',
    'C6',
    'S4',
    'Q4',
    'T2',
    'A7',
    'Z0',
    'm2',
    'l2',
    'h1',
    'v1',
    'c6',
    's4',
    'q4',
    't2',
    'a7',
    'z0',
  )
  .chain((kind) => {
    const letter = kind[0]!;
    if (/a/i.test(letter))
      return fc
        .tuple(fc.constantFrom('5 5 0 0 1', '7 3 20 1 0'), number, number)
        .map(([shape, x, y]) => `${letter} ${shape} ${x} ${y}`);
    const count = Number(kind[1]);
    return fc.array(number, { minLength: count, maxLength: count }).map((list) => `${letter} ${list.join(' ')}`);
  });

describe('writeOut', () => {
  it('says relative commands and short forms as svgpath does, on random paths', () => {
    let short = 0;
    fc.assert(
      fc.property(fc.array(command, { maxLength: 12 }), (commands) => {
        const path = ['M 3 9', ...commands].join(' ');
        const theirs: (string | number)[][] = [];
        svgpath(path)
          .abs()
          .unshort()
          .iterate((segment) => {
            theirs.push(segment.map((each) => (typeof each === 'number' ? each + 0 : each)));
          });
        const ours = writeOut(takeApart(path).segments).map((each) =>
          each.map((n) => (typeof n === 'number' ? n + 0 : n)),
        );
        expect(ours).toEqual(theirs);
        if (/[stST]/.test(path)) short++;
      }),
      { numRuns: 300 },
    );
    expect(short).toBeGreaterThan(100);
  });

  it('takes the mirror image of the control point before it, or none', () => {
    expect(writeOut(takeApart('M 0 0 c 1 2 3 4 5 6 s 1 1 2 2').segments).at(-1)).toEqual(['C', 7, 8, 6, 7, 7, 8]);
    expect(writeOut(takeApart('M 1 1 L 4 4 T 8 0').segments).at(-1)).toEqual(['Q', 4, 4, 8, 0]);
  });
});

it('a path of 6,000 strokes is drawn, closed or not, and one of more is refused', () => {
  const zigzag = (count: number) =>
    `M0 9${Array.from({ length: count }, (_, i) => `L${(i + 1) / 100} ${i % 2 === 0 ? 8 : 9}`).join('')}`;
  const drawn = (path: string) => {
    const found = drawPath(path, 'mm');
    return 'chain' in found ? found.chain.length : found.sentence;
  };
  // Neither the start nor the Z at the end is a stroke.
  for (const end of ['', 'Z']) {
    expect(drawn(`${zigzag(6000)}${end}`)).toBe(6000);
    expect(drawn(`${zigzag(6001)}${end}`)).toBe('fault.too-many.strokes');
  }
});
