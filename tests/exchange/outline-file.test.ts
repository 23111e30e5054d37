import type { OutlineProfile } from '@fielded/core';
import { readJob, readShop } from '@fielded/core';
import { readOutlineFile, writeDxf } from '@fielded/exchange';
import { readReportPath } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { profileChain } from '../../packages/core/src/profile/chain.ts';

const PATH = 'M 0 9 L 12 9 A 20 20 0 0 1 30 2 L 30 0';

function svg(body: string, root = ''): string {
  return `<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg" ${root}>\n${body}\n</svg>\n`;
}

/** The profile that a job gets from a drawing, or the faults. */
function readWith(name: string, text: string): OutlineProfile | string[] {
  const job = `fielded: 1
units: in
panel: { thickness: 20 mm }
frame: { thickness: 22 mm, groove: { width: 6.4 mm, depth: 11 mm, setback: 7.5 mm }, swellGap: 2 mm }
cuts: [ { name: raise, side: front, profile: { shape: outline, file: ${name} } } ]`;
  const asked: string[] = [];
  const read = readJob(job, {
    loadOutline: (path, from) => {
      asked.push(`${from}|${path}`);
      return readOutlineFile(path, text);
    },
  });
  expect(asked).toEqual([`|${name}`]);
  return read.job ? (read.job.cuts[0]!.profile as OutlineProfile) : read.faults.map((f) => f.message);
}

const drawn = readReportPath(PATH)[0]!;
/** The same outline as a draughtsman has it: y up, the face at 0. */
const upright = drawn.map((c) => ({ ...c, y0: -c.y0, y1: -c.y1, cy: -c.cy, turn: (0 - c.turn) as -1 | 0 | 1 }));

function expectDrawn(profile: OutlineProfile | string[]): void {
  expect(profile).not.toBeInstanceOf(Array);
  const { chain, reach, depth } = profile as OutlineProfile;
  expect(reach).toBeCloseTo(30, 9);
  expect(depth).toBeCloseTo(9, 9);
  expect(chain).toHaveLength(drawn.length);
  chain.forEach((c, i) => {
    expect(c.turn).toBe(drawn[i]!.turn);
    for (const key of ['x0', 'y0', 'x1', 'y1', 'r'] as const) expect(c[key]).toBeCloseTo(drawn[i]![key], 7);
  });
}

describe('an outline from a DXF drawing', () => {
  it('is the profile that was drawn, in millimetres though the job is in inches', () => {
    expectDrawn(readWith('thumb.dxf', writeDxf([{ name: 'PROFILE', chains: [upright] }])));
  });

  it('may be drawn from the face to the edge', () => {
    const back = upright
      .map((c) => ({ ...c, x0: c.x1, y0: c.y1, x1: c.x0, y1: c.y0, turn: (0 - c.turn) as -1 | 0 | 1 }))
      .reverse();
    expectDrawn(readWith('thumb.DXF', writeDxf([{ name: 'PROFILE', chains: [back] }])));
  });

  it('may have been mirrored: its entities then face down, with x and bulges the other way', () => {
    const facing = (entities: string) => `0 SECTION 2 ENTITIES ${entities} 0 ENDSEC 0 EOF   `.split(' ').join('\n');
    const bulge = Math.tan(Math.PI / 8);
    const polyline = `0 LWPOLYLINE 8 0 90 4 70 0 230 -1 10 0 20 -9 10 -11 20 -9 42 ${-bulge} 10 -14 20 -6 10 -14 20 0`;
    const loose =
      '0 LINE 8 0 10 0 20 -9 11 11 21 -9 0 ARC 8 0 10 -11 20 -6 40 3 50 180 51 270 230 -1 0 LINE 8 0 10 14 20 -6 11 14 21 0';
    // Gaps of 0.0018 mm, as programs leave that write four decimals of an inch.
    const rounded =
      '0 LINE 8 0 10 0 20 -9 11 11.0013 21 -9.0013 0 ARC 8 0 10 11 20 -6 40 3 50 270 51 0 0 LINE 8 0 10 14.0018 20 -6 11 14.0018 21 0';
    for (const entities of [polyline, loose, rounded]) {
      const { chain } = readWith('mirrored.dxf', facing(entities)) as OutlineProfile;
      expect(chain.map(({ turn }) => turn)).toEqual([0, -1, 0]);
      const [land, hollow] = chain as readonly [OutlineProfile['chain'][number], OutlineProfile['chain'][number]];
      expect(Math.hypot(land.x1 - 11, land.y1 - 9, hollow.x1 - 14, hollow.y1 - 6, hollow.r - 3)).toBeLessThan(0.005);
    }
  });

  it('is one outline', () => {
    const two = writeDxf([
      { name: 'A', chains: [upright, upright.map((c) => ({ ...c, x0: c.x0 + 50, x1: c.x1 + 50, cx: c.cx + 50 }))] },
    ]);
    expect(readWith('two.dxf', two)).toEqual([
      'cuts[0].profile.file: two.dxf: the drawing holds 2 separate outlines. Leave one in it, its pieces meeting end to end.',
    ]);
    expect(readWith('bad.dxf', 'not a drawing')).toEqual([
      'cuts[0].profile.file: bad.dxf: no outline of lines and arcs was found: this is not a text DXF file, or it breaks off. Save it with one polyline, or lines and arcs that meet.',
    ]);
  });

  it('has the wood below the face: one drawn above it is told so', () => {
    expect(readWith('above.dxf', writeDxf([{ name: 'A', chains: [drawn] }]))).toEqual([
      'cuts[0].profile.file: the path lies outside the wood. Write x as the distance in from the edge and y as the depth below the face, both above 0.',
    ]);
  });
});

describe('an outline from an SVG drawing', () => {
  it.each([
    ['without a size, a unit a millimetre', svg(`<path d="${PATH}"/>`)],
    ['sized in mm', svg(`<path id='p' d='${PATH}'/>`, 'width="100mm" height="50mm" viewBox="0 0 100 50"')],
    [
      'drawn double',
      svg('<path d="M 0 18 H 24 A 40 40 0 0 1 60 4 V 0"/>', 'width="100mm" height="50mm" viewBox="0 0 200 100"'),
    ],
    ['beside text, with comments', svg(`<!-- <path d="M 0 0"/> --><text>thumb</text><path d="${PATH}"/>`)],
  ])('%s', (_, text) => {
    expectDrawn(readWith('thumb.svg', text));
  });

  it.each([
    [svg(''), 'there is no path in the drawing. Turn its shapes into one path.'],
    [
      svg(`<path d="${PATH}"/><path d="${PATH}"/>`),
      'the drawing holds 2 paths. Leave one in it: the outline from the edge to the face.',
    ],
    [
      svg(`<g transform="scale(2)"><path d="${PATH}"/></g>`),
      'the drawing is moved or scaled by a transform. Save it with its transforms flattened.',
    ],
    [
      svg(`<path d="${PATH}"/>`, 'width="5em" viewBox="0 0 9 9"'),
      'its width and its view box do not say how long a unit is. Give the drawing a width in mm.',
    ],
    ['hello', 'this is not an SVG drawing. Save it as plain SVG.'],
  ])('%# is refused', (text, message) => {
    expect(readWith('x.svg', text)).toEqual([`cuts[0].profile.file: x.svg: ${message}`]);
  });

  it('with a path that is none is refused like one in the job', () => {
    expect(readWith('x.svg', svg('<path d="M 0 9 zigzag"/>'))).toEqual([
      expect.stringMatching(/^cuts\[0\]\.profile\.file: the path is not SVG path data: it cannot be read from "/),
    ]);
  });
});

describe('a drawing', () => {
  it('of another kind, or where nothing can open it, is told so', () => {
    expect(readWith('x.png', '')).toEqual([
      'cuts[0].profile.file: x.png: this is neither a DXF nor an SVG drawing by its name. Name a file that ends in .dxf or .svg.',
    ]);
    const { faults } = readShop('fielded: 1\nknives: { thumb: { shape: outline, file: thumb.dxf } }');
    expect(faults.map((f) => [f.code, f.message])).toEqual([
      [
        'outline-file',
        'knives.thumb.file: thumb.dxf: no other file can be opened from here. Write the outline as path: here.',
      ],
    ]);
  });

  it('may stand in a shop’s knife, and is looked for from the shop file', () => {
    const asked: string[] = [];
    const { shop } = readShop(
      'fielded: 1\nknives: { thumb: { shape: outline, file: thumb.svg } }',
      'shops/mine.yaml',
      (path, from) => {
        asked.push(`${from}|${path}`);
        return PATH;
      },
    );
    expect(asked).toEqual(['shops/mine.yaml|thumb.svg']);
    expect(profileChain(shop!.knives.thumb!.profile)).toHaveLength(3);
  });

  it('stands instead of a path, not beside one', () => {
    const { faults } = readShop(
      'fielded: 1\nknives: { thumb: { shape: outline, path: "M 0 9 L 30 0", file: thumb.svg } }',
    );
    expect(faults).toHaveLength(1);
    expect(faults[0]!.message).toMatch(/^file is no key of knives.thumb. Known here: shape, path, head, groundFor, /);
  });
});
