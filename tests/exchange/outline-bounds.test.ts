// Drawings as large as are read, made to be slow: each is read, or refused, in time that grows with its size.
import { readDxf, readOutlineFile } from '@fielded/exchange';
import { describe, expect, it } from 'vitest';
import { leastProcessorTime } from '../support/timing.ts';

/** What is promised is two seconds on two busy cores: half of it here, counted as processor time, ms. */
const MOST = 1000;

function timed<T>(run: () => T): T {
  let result: T | undefined;
  const took = leastProcessorTime(() => {
    result = run();
  }, MOST);
  expect(took, 'ms of processor time').toBeLessThan(MOST);
  return result!;
}

const line = (x0: number, y0: number, x1: number, y1: number) =>
  `0\nLINE\n8\n0\n10\n${x0}\n20\n${y0}\n11\n${x1}\n21\n${y1}\n`;
const dxf = (entities: string) => `0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;
const many = (n: number, one: (i: number) => string) => Array.from({ length: n }, (_, i) => one(i)).join('');
const svg = (inside: string) => `<svg width="100mm" viewBox="0 0 100 100">${inside}</svg>`;

describe('a DXF drawing', () => {
  it('of 27,000 loose lines and 1,000 in one piece is refused with their number', () => {
    const polyline = `0\nLWPOLYLINE\n8\n0\n90\n1001\n70\n0\n${many(1001, (i) => `10\n${i}\n20\n5\n`)}`;
    const text = dxf(many(27_000, (i) => line((3 * i) % 9999, 0, (3 * i) % 9999, 1)) + polyline);
    expect(timed(() => readOutlineFile('x.dxf', text))).toMatchObject({
      refused: expect.stringContaining('The drawing has 28000 lines and arcs, and up to 6000 are read'),
    });
  });

  it.each([
    ['in order', (i: number) => i],
    ['backwards', (i: number) => 5999 - i],
    ['shuffled', (i: number) => (i * 2477) % 6000],
  ])('of 6,000 lines that meet, %s, is one outline', (_, place) => {
    const text = dxf(many(6000, (i) => line(place(i), 0, place(i) + 1, 0)));
    const { outlines, leftOut } = timed(() => readDxf(text));
    expect(leftOut).toEqual([]);
    expect(outlines.map(({ chain }) => chain.length)).toEqual([6000]);
    const { chain } = outlines[0]!;
    const [low, high] = [chain[0]!.x0, chain.at(-1)!.x1].sort((p, q) => p - q);
    expect([low, high]).toEqual([0, 6000]);
    expect(chain.every((c, i) => i === 0 || c.x0 === chain[i - 1]!.x1)).toBe(true);
  });

  it('of 6,000 lines from one point is 3,000 outlines', () => {
    const { outlines } = timed(() => readDxf(dxf(many(6000, (i) => line(0, 0, i + 1, 1)))));
    expect(outlines.length).toBe(3000);
  });

  it('with coordinates past all reason ends', () => {
    const { outlines } = timed(() => readDxf(dxf(line(1e300, 0, 1e300, 1e300) + line(1e300, 1e300, -1e300, 1))));
    expect(outlines.length).toBe(1);
  });

  it('joins ends on either side of the border between two squares', () => {
    const { outlines } = readDxf(dxf(line(0, 0, 2e-6 - 1e-9, 0) + line(2e-6 + 1e-9, 0, 5, 0)));
    expect(outlines.length).toBe(1);
  });

  it('names eight kinds that it leaves out, shortened, and counts the rest', () => {
    const { leftOut } = timed(() => readDxf(dxf(`0\n${'X'.repeat(500_000)}\n${many(20_000, (i) => `0\nK${i}\n`)}`)));
    expect(leftOut.length).toBe(9);
    expect(leftOut[0]!.length).toBeLessThan(60);
    expect(leftOut[8]).toBe('and 19993 more kinds');
  });
});

describe('an SVG drawing', () => {
  it.each([
    [
      '240,000 comments that do not end',
      svg('<!--'.repeat(240_000)),
      'a comment in the drawing is opened and not closed',
    ],
    ['160,000 paths that do not end', svg('<path '.repeat(160_000)).replaceAll('>', ' '), 'this is not an SVG drawing'],
    ['80,000 paths', svg("<path d=''/>".repeat(80_000)), 'the drawing holds 80000 paths'],
  ])('of %s is refused', (_, text, refused) => {
    expect(timed(() => readOutlineFile('x.svg', text))).toMatchObject({ refused });
  });

  it.each([
    ['short strokes', `M0 9${'h1e-4'.repeat(190_000)}V0`],
    ['strokes of no length', `M0 9L${'1 '.repeat(480_000)}V0`],
  ])('of too many %s goes on as it is, to be refused by who reads the path', (_, path) => {
    expect(timed(() => readOutlineFile('x.svg', svg(`<path d="${path}"/>`)))).toBe(path);
  });

  it('keeps what stands between closed comments', () => {
    const text = svg('<!-- <path d="M0 1"/> --><path d="M0 9H4V0"/><!---->');
    expect(readOutlineFile('x.svg', text)).toBe('M0 9H4V0');
  });
});
