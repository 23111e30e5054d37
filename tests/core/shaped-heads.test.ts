// Radii of arches and cathedrals against plane geometry worked out by other ways; volumes against a grid.
import { acceptJob, evaluate, readJob } from '@fielded/core';
import { readReportPath } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { areaWithin, outlineLength } from '../../packages/core/src/door/outline-measures.ts';
import {
  archRadius,
  cathedralHalfWidth,
  edgeRadii,
  findShapedHeadFault,
  type ShapedHead,
  shapedCurve,
  squareGap,
} from '../../packages/core/src/door/shaped-head.ts';
import { tornShoulder } from '../../packages/core/src/door/shaped-head-report.ts';
import { shapedOutline } from '../../packages/core/src/door/shaped-panel.ts';
import { volumeTakenRound } from '../../packages/core/src/door/volume-taken-round.ts';
import { arc, line, shiftCurve } from '../../packages/geometry/src/curve/curve.ts';
import { Random } from '../support/random.ts';

const CATHEDRAL = { shape: 'cathedral', rise: 60, crown: 120, ears: 80 } as const;

/** A head that stands over an opening 480 mm wide. */
type NamedHead = Exclude<ShapedHead, { shape: 'outline' }>;

function randomHead(random: Random): NamedHead {
  for (;;) {
    const rise = random.between(5, 120);
    if (random.unit() < 0.5) return { shape: 'arch', rise };
    const head = { shape: 'cathedral' as const, rise, crown: random.between(60, 200), ears: random.between(40, 160) };
    if (findShapedHeadFault(head, 480) === null) return head;
  }
}

/** Height of a head's sight edge at x, from circles alone: no curve of the engine. */
function heightOf(head: NamedHead, x: number): number {
  if (head.shape === 'arch') {
    // Through both springings and the apex: intersecting chords give the radius.
    const r = (240 * 240) / head.rise / 2 + head.rise / 2;
    return head.rise - r + Math.sqrt(r * r - x * x);
  }
  const { rise, crown, ears } = head;
  const foot = Math.sqrt((crown + ears) ** 2 - (crown + ears - rise) ** 2);
  const away = Math.abs(x);
  if (away >= foot) return 0;
  const turn = (foot * crown) / (crown + ears);
  return away <= turn ? rise - crown + Math.sqrt(crown ** 2 - x * x) : ears - Math.sqrt(ears ** 2 - (foot - away) ** 2);
}

describe('the radii of a head', () => {
  it('are those of worked examples', () => {
    expect(archRadius(480, 60)).toBeCloseTo(510, 9);
    expect(cathedralHalfWidth(CATHEDRAL)).toBeCloseTo(142.828568571, 9);
    // The centres lie as far apart as both radii.
    expect(Math.hypot(cathedralHalfWidth(CATHEDRAL), 80 - (60 - 120))).toBeCloseTo(200, 9);
    expect(edgeRadii(CATHEDRAL, 400, 9)).toEqual({ crown: 129, ears: 71 });
    expect(edgeRadii(CATHEDRAL, 400, 9 - 38)).toEqual({ crown: 91, ears: 109 });
    expect(squareGap(2, 1, Math.PI / 6)).toBeCloseTo(1.866025404, 9);
  });

  it('of any outline run on along their own circles and lines past the opening', () => {
    const random = new Random(12);
    for (let n = 0; n < 60; n++) {
      // An arc over an opening of 400 on a circle wide enough to go on, or below its middle; 9 mm more at both sides.
      const [r, half] = [random.between(215, 600), 209];
      const up = random.oneOf([1, -1] as const);
      const sag = Math.sqrt(r * r - 200 * 200);
      const chain = [arc(0, 0, 400, 0, 200, -up * sag, up === 1 ? -1 : 1)];
      const curve = shapedCurve({ shape: 'outline', rise: r - sag, chain }, 400, 0, half);
      const heights = [curve[0]!.y0, curve.at(-1)!.y1];
      expect([curve[0]!.x0, curve.at(-1)!.x1]).toEqual([expect.closeTo(-half, 9), expect.closeTo(half, 9)]);
      const wanted = up * (Math.sqrt(r * r - half * half) - sag);
      expect(heights).toEqual([expect.closeTo(wanted, 9), expect.closeTo(wanted, 9)]);
      // A line goes on as steep as it is.
      const slope = random.between(-0.5, 0.5);
      const lines = [line(0, 0, 200, 200 * slope), line(200, 200 * slope, 400, 0)];
      const run = shapedCurve({ shape: 'outline', rise: 100, chain: lines }, 400, 0, half);
      expect([run[0]!.y0, run.at(-1)!.y1]).toEqual([expect.closeTo(-9 * slope, 9), expect.closeTo(-9 * slope, 9)]);
    }
    // Half a circle goes no further: level from its end on.
    const half = [arc(0, 0, 400, 0, 200, 0, -1)];
    const level = shapedCurve({ shape: 'outline', rise: 200, chain: half }, 400, 0, 209);
    expect([level[0]!.y0, level[0]!.y1, level.at(-1)!.y1]).toEqual([0, 0, 0]);
  });

  it('give parallels that lie the same distance from the sight edge everywhere, on 200 random heads', () => {
    const random = new Random(11);
    for (let n = 0; n < 200; n++) {
      const head = randomHead(random);
      const out = random.between(-15, 9);
      if (head.shape === 'cathedral' && (head.ears - out < 1 || head.crown + out < 1)) continue;
      // Some end within the crown already.
      const half = n % 3 === 0 ? random.between(5, 60) : 225;
      const curve = shapedCurve(head, 480, out, half);
      expect([curve[0]!.x0, curve.at(-1)!.x1]).toEqual([expect.closeTo(-half, 9), expect.closeTo(half, 9)]);
      for (const c of curve) {
        // The least distance from a point of the parallel to the sight edge is how far out it lies.
        const mid = c.turn === 0 ? { x: (c.x0 + c.x1) / 2, y: c.y0 } : onArc(c, random.between(0.05, 0.95));
        if (Math.abs(mid.x) > 200) continue;
        let least = Number.POSITIVE_INFINITY;
        let best = mid.x;
        let [from, to] = [Math.max(-240, mid.x - 40), Math.min(240, mid.x + 40)];
        for (let round = 0; round < 40; round++) {
          for (let i = 0; i <= 40; i++) {
            const x = from + ((to - from) * i) / 40;
            const distance = Math.hypot(x - mid.x, heightOf(head, x) - mid.y);
            if (distance < least) [least, best] = [distance, x];
          }
          const step = (to - from) / 10;
          [from, to] = [Math.max(-240, best - step), Math.min(240, best + step)];
        }
        expect(least).toBeCloseTo(Math.abs(out), 6);
      }
    }
  });

  it('are refused where a head cannot stand over its opening', () => {
    expect(findShapedHeadFault({ shape: 'arch', rise: 241 }, 480)).toBe('rise-past-half-circle');
    expect(findShapedHeadFault({ ...CATHEDRAL, rise: 201 }, 480)).toBe('rise-past-radii');
    expect(findShapedHeadFault({ ...CATHEDRAL, rise: 190 }, 390)).toBe('wider-than-opening');
    expect(findShapedHeadFault({ shape: 'arch', rise: 240 }, 480)).toBeNull();
  });
});

function onArc(c: { x0: number; y0: number; x1: number; y1: number; cx: number; cy: number; r: number }, u: number) {
  const [a, b] = [Math.atan2(c.y0 - c.cy, c.x0 - c.cx), Math.atan2(c.y1 - c.cy, c.x1 - c.cx)];
  const angle = a + u * (b - a);
  return { x: c.cx + c.r * Math.cos(angle), y: c.cy + c.r * Math.sin(angle) };
}

describe('a panel under a shaped head', () => {
  const arch = { shaped: { shape: 'arch', rise: 60 }, opening: 480, width: 498, height: 700, insertion: 9 } as const;

  it('has the area and the length of edge of a rectangle and a segment', () => {
    const half = Math.asin(249 / 519);
    const straight = 700 - (519 - 519 * Math.cos(half));
    expect(areaWithin(shapedOutline(arch, 0))).toBeCloseTo(
      498 * straight + (519 ** 2 * (2 * half - Math.sin(2 * half))) / 2,
      6,
    );
    expect(outlineLength(shapedOutline(arch, 0))).toBeCloseTo(498 + 2 * straight + 519 * 2 * half, 8);
  });

  it('has the same lines and arcs, each once, whether its head is named or drawn', () => {
    // Of a wide crown nothing else is left far enough in; ears of 6 mm have no radius left on the panel's edge.
    const [wide, tight] = [
      { ...CATHEDRAL, crown: 250 },
      { ...CATHEDRAL, crown: 150, ears: 6 },
    ];
    for (const shaped of [arch.shaped, CATHEDRAL, wide, tight]) {
      const panel = { ...arch, shaped };
      const curve = shapedCurve(shaped, arch.opening, 0, arch.opening / 2);
      const chain = curve.map((c) => shiftCurve(c, arch.opening / 2, 0));
      const drawn = { ...arch, shaped: { shape: 'outline', rise: shaped.rise, chain } } as const;
      for (const inside of shaped === wide ? [0, 38, 240] : [0, 4, 20, 38]) {
        const corners = (of: Parameters<typeof shapedOutline>[0]) =>
          shapedOutline(of, inside).map(({ x0, y0, turn, r }) => [x0, y0, turn, turn === 0 ? 0 : r]);
        const wanted = corners(panel);
        const found = corners(drawn);
        expect(found).toEqual(wanted.map((corner) => corner.map((figure) => expect.closeTo(figure, 6))));
      }
    }
  });

  it('of slopes has a foot, two sides and each slope as one line, whose corners are those of parallels', () => {
    // A gable 100 high over 480: a slope of 5 in 12, 13 along.
    const chain = [line(0, 0, 240, 100), line(240, 100, 480, 0)];
    const panel = { ...arch, shaped: { shape: 'outline', rise: 100, chain } } as const;
    for (const inside of [0, 4, 20, 38]) {
      const out = arch.insertion - inside;
      const half = 249 - inside;
      // The slope's line, moved square to itself, over the middle and over the sides; the apex of the panel lies at its height.
      const springing = 700 - arch.insertion - 100;
      const over = (x: number) => springing + 100 + (out * 13) / 12 - (x * 5) / 12;
      const corners = [
        [-half, inside],
        [half, inside],
        [half, over(half)],
        [0, over(0)],
        [-half, over(half)],
      ];
      expect(shapedOutline(panel, inside).map(({ x0, y0 }) => [x0, y0])).toEqual(
        corners.map((corner) => corner.map((figure) => expect.closeTo(figure, 6))),
      );
    }
  });

  it('loses to a rebate what lies between two outlines', () => {
    const rebate = [{ x0: 0, x1: 12, taken: () => 5 }];
    for (const shaped of [arch.shaped, CATHEDRAL]) {
      const panel = { ...arch, shaped };
      const ring = areaWithin(shapedOutline(panel, 0)) - areaWithin(shapedOutline(panel, 12));
      expect(volumeTakenRound(panel, rebate) / (5 * ring)).toBeCloseTo(1, 9);
    }
  });

  it('loses to a bevel what a grid finds', () => {
    const bevel = (a: number) => Math.max(0, 9 - (9 * a) / 38);
    const panel = { ...arch, shaped: CATHEDRAL };
    // Distance to the edge from nothing but the outline's own pieces, on a grid of 2 mm.
    const edge = shapedOutline(panel, 0);
    const step = 2;
    let volume = 0;
    for (let x = -249 + step / 2; x < 249; x += step) {
      for (let y = step / 2; y < 700; y += step) {
        const springing = 700 - 9 - 60;
        const inside = y < 100 || y - springing < panelTop(x);
        if (!inside) continue;
        volume += bevel(Math.min(...edge.map((c) => distanceTo(c, x, y)))) * step * step;
      }
    }
    const exact = volumeTakenRound(panel, [{ x0: 0, x1: 38, taken: bevel }]);
    expect(Math.abs(volume / exact - 1)).toBeLessThan(2e-3);
  });

  function panelTop(x: number): number {
    const [crown, ears, foot] = [129, 71, Math.sqrt(200 ** 2 - 140 ** 2)];
    const away = Math.abs(x);
    if (away >= foot) return 9;
    return away <= (foot * crown) / 200
      ? -60 + Math.sqrt(crown ** 2 - x * x)
      : 80 - Math.sqrt(ears ** 2 - (foot - away) ** 2);
  }
});

/** Distance from a point to a line or an arc of at most half a turn. */
function distanceTo(c: ReturnType<typeof shapedOutline>[number], x: number, y: number): number {
  if (c.turn === 0) {
    const [dx, dy] = [c.x1 - c.x0, c.y1 - c.y0];
    const u = Math.min(1, Math.max(0, ((x - c.x0) * dx + (y - c.y0) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(x - c.x0 - u * dx, y - c.y0 - u * dy);
  }
  const angle = (px: number, py: number) => Math.atan2(py - c.cy, px - c.cx);
  const full = 2 * Math.PI;
  const past = (c.turn * (angle(x, y) - angle(c.x0, c.y0)) + full) % full;
  const sweep = (c.turn * (angle(c.x1, c.y1) - angle(c.x0, c.y0)) + full) % full;
  if (past <= sweep) return Math.abs(Math.hypot(x - c.cx, y - c.cy) - c.r);
  return Math.min(Math.hypot(x - c.x0, y - c.y0), Math.hypot(x - c.x1, y - c.y1));
}

const job = (head: string, more = '') => `fielded: 1
panel: { thickness: 20, species: black cherry }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 }, head: large }
  - { name: back, side: back, profile: { shape: cove, reach: 14, depth: 4.9, land: 9 }, run: over }
doors:
  - { name: A, width: 520, height: 900, stile: 60, rail: 75, ${more} head: ${head} }
`;
const SHOP = {
  name: 'shop.yaml',
  text: 'fielded: 1\nheads: { large: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 15, maxSpeed: 7000 } }\n',
};

it.each([
  ['front', 'under', 'counterclockwise', 'left'],
  ['front', 'under', 'clockwise', 'right'],
  ['front', 'over', 'counterclockwise', 'right'],
  ['front', 'over', 'clockwise', 'left'],
  ['back', 'under', 'counterclockwise', 'right'],
  ['back', 'under', 'clockwise', 'left'],
  ['back', 'over', 'counterclockwise', 'left'],
  ['back', 'over', 'clockwise', 'right'],
] as const)('a %s cut run %s, %s, goes against the grain on the %s shoulder', (side, run, rotation, shoulder) => {
  expect(tornShoulder({ side, run }, rotation)).toBe(shoulder);
});

describe('the report of a shaped door', () => {
  const read = (text: string) => readJob(text, { shop: SHOP });

  it('has sight edge, panel edge, field and the bearing that follows them', () => {
    const report = evaluate(read(job('{ shape: cathedral, rise: 60, crown: 120, ears: 80 }')).job!);
    expect(report.doors![0]!.head).toMatchObject({
      shape: 'cathedral',
      panelEdge: { crown: 129, ears: 71 },
      field: { crown: 91, ears: 109 },
      bearing: 42,
      leastConcave: 51,
    });
    expect(report.doors![0]!.parts.find(({ part }) => part === 'top rail')!.width).toBe(135);
    const [edge] = readReportPath(report.doors![0]!.head!.paths.panelEdge);
    expect(edge!.filter((c) => c.turn !== 0).map(({ r }) => Math.round(r * 1e6) / 1e6)).toEqual([71, 129, 71]);
    expect(report.problems.map(({ code }) => code)).toContain('curved-work');
  });

  it('names the least ears and the head that would do where a hollow is too tight', () => {
    const report = evaluate(read(job('{ shape: cathedral, rise: 60, crown: 120, ears: 50 }')).job!);
    const [problem] = report.problems.filter(({ code }) => code === 'head-too-hollow');
    expect(problem!.figures).toMatchObject({ edge: 41, bearing: 42, least: 51, diameter: 158 });
    // What it names does go.
    const eased = evaluate(read(job('{ shape: cathedral, rise: 60, crown: 120, ears: 51 }')).job!);
    expect(eased.problems.filter(({ code }) => code === 'head-too-hollow')).toEqual([]);
    const smaller = { ...SHOP, text: SHOP.text.replace('cuttingDiameter: 160', 'cuttingDiameter: 158') };
    const fits = evaluate(readJob(job('{ shape: cathedral, rise: 60, crown: 120, ears: 50 }'), { shop: smaller }).job!);
    expect(fits.problems.filter(({ code }) => code === 'head-too-hollow')).toEqual([]);
  });

  it('keeps the arcs of a basket arch apart, which touch inside each other', () => {
    // Sides of radius 100, a crown of 300: centres 200 apart, arcs that meet 50 mm in and 100·√3/2 up.
    const up = 100 * Math.sin(Math.PI / 3);
    const rise = 300 - 2 * up;
    const y = rise - up;
    const path = `M 0 ${rise} A 100 100 0 0 1 50 ${y} A 300 300 0 0 1 350 ${y} A 100 100 0 0 1 400 ${rise}`;
    const { head } = evaluate(read(job(`{ shape: outline, path: "${path}" }`)).job!).doors![0]!;
    const radii = (at: string | null) =>
      readReportPath(at!)[0]!
        .filter((c) => c.turn !== 0)
        .map(({ r }) => Math.round(r * 1e4) / 1e4)
        .sort((p, q) => p - q);
    expect(radii(head!.paths.panelEdge)).toEqual([109, 109, 309]);
    expect(radii(head!.paths.field)).toEqual([71, 71, 271]);
  });

  it('says where the raise runs to a point', () => {
    const report = evaluate(read(job('{ shape: cathedral, rise: 30, crown: 25, ears: 90 }')).job!);
    expect(report.problems.map(({ code }) => code)).toContain('head-field-pointed');
    expect(report.doors![0]!.head!.field).toBeNull();
    expect(report.doors![0]!.panels[0]!.field).toBeNull();
  });

  it('knows the largest groove cutter that follows the rail, and whether its sticking does', () => {
    // The rail is hollow where the panel is round: R − groove depth ≤ r (plane geometry), 2 × (120 + 11) in diameter.
    const plain = evaluate(read(job('{ shape: cathedral, rise: 60, crown: 120, ears: 80 }')).job!);
    expect(plain.doors![0]!.head!.greatestGroover).toBeCloseTo(262, 9);
    const arch = evaluate(read(job('{ shape: arch, rise: 60 }')).job!);
    expect(arch.doors![0]!.head!.greatestGroover).toBeCloseTo(2 * (archRadius(400, 60) + 11), 9);
    const pointed = evaluate(read(job('{ shape: outline, path: "M 0 60 L 200 0 L 400 60" }')).job!);
    expect(pointed.doors![0]!.head!.greatestGroover).toBe(0);
    // A sticking of 5 on the head of 160: a bearing of 75.
    const stuck = (head: string) =>
      evaluate(
        read(
          job(head).replace(
            'swellGap: 2 }',
            'swellGap: 2, sticking: { shape: ovolo, reach: 5, depth: 5, head: large } }',
          ),
        ).job!,
      ).problems.filter(({ code }) => code === 'head-rail-too-hollow');
    expect(stuck('{ shape: cathedral, rise: 60, crown: 75, ears: 120 }')).toEqual([]);
    const [problem] = stuck('{ shape: cathedral, rise: 60, crown: 74, ears: 120 }');
    expect(problem!.figures).toMatchObject({ edge: 74, bearing: 75, diameter: 158 });
    expect(stuck('{ shape: outline, path: "M 0 60 L 200 0 L 400 60" }')[0]!.sentence).toBe(
      'head-rail-too-hollow.corner',
    );
  });

  it('says where a low panel keeps no field beside its head', () => {
    const low = evaluate(read(job('{ shape: arch, rise: 99 }', 'rows: [120, rest], muntin: 60,')).job!);
    expect(low.doors![0]!.head!.field).toBeNull();
    const [problem] = low.problems.filter(({ code }) => code === 'head-no-field');
    expect(problem).toMatchObject({ severity: 'error', figures: { door: 'A', reach: 38 } });
    // Of two front cuts it is the one that reaches further, whichever comes first.
    const bead = '  - { name: bead, side: front, profile: { shape: rebate, reach: 6, depth: 9.5 } }\n';
    const text = job('{ shape: arch, rise: 99 }', 'rows: [120, rest], muntin: 60,');
    for (const two of [text.replace('cuts:\n', `cuts:\n${bead}`), text.replace('doors:\n', `${bead}doors:\n`)]) {
      const [said] = evaluate(read(two).job!).problems.filter(({ code }) => code === 'head-no-field');
      expect(said).toMatchObject({ figures: { cut: 'raise', reach: 38 } });
    }
    const higher = evaluate(read(job('{ shape: arch, rise: 99 }', 'rows: [240, rest], muntin: 60,')).job!);
    expect(higher.problems.map(({ code }) => code)).not.toContain('head-no-field');
    expect(higher.doors![0]!.head!.field).not.toBeNull();
  });

  it.each([
    ['{ shape: arch, rise: 0 }', '', 'above 0'],
    ['{ shape: cathedral, rise: 60, crown: 120, ears: 0 }', '', 'above 0'],
    ['{ shape: arch, rise: 201 }', '', 'a rise of 201 mm is more than half'],
    ['{ shape: arch, rise: 60, crown: 90 }', '', 'crown is not used: shape: arch has rise'],
    ['{ shape: cathedral, rise: 60, crown: 90 }', '', 'ears is missing'],
    ['{ shape: cathedral, rise: 160, crown: 200, ears: 200 }', '', 'wider than the opening of 400 mm'],
    ['{ shape: ogive, rise: 60 }', '', 'ogive'],
    ['{ shape: arch, rise: 60 }', 'across: 2, muntin: 60,', 'the top row has 2 openings'],
    ['{ shape: arch, rise: 60 }', 'grain: across,', 'needs a panel whose grain runs up'],
  ])('is refused for %s %s', (head, more, words) => {
    const { faults } = read(job(head, more));
    expect(faults.map(({ message }) => message).join('\n')).toContain(words);
  });

  it('is refused in a job made by hand too', () => {
    const { job: made } = read(job('{ shape: arch, rise: 60 }'));
    const [door] = made!.doors;
    const withHead = (head: ShapedHead) => () => acceptJob({ ...made!, doors: [{ ...door!, head }] });
    expect(withHead({ shape: 'arch', rise: 60 })).not.toThrow();
    expect(withHead({ shape: 'arch', rise: 300 })).toThrow('doors[0].head does not fit an opening 400 wide');
    expect(withHead({ shape: 'arch', rise: Number.NaN })).toThrow(RangeError);
    expect(withHead({ shape: 'cathedral', rise: 60, crown: 0, ears: 80 })).toThrow(
      'doors[0].head.crown must be above 0',
    );
  });

  it('swells against the groove beside a steep head before it does at its sides', () => {
    const season = 'season: { made: 6, driest: 6, dampest: 12 }\n';
    const text = job('{ shape: arch, rise: 190 }')
      .replace('swellGap: 2', 'swellGap: 4, endGap: 0.5')
      .replace('doors:', `${season}doors:`);
    const report = evaluate(read(text).job!);
    const [problem] = report.problems.filter(({ code }) => code === 'head-bottoms-out');
    // Each edge moves by 200 x 0.00248 x 6 or so, square to an edge that leans 87 degrees.
    const { lean } = report.doors![0]!.head!;
    const moves = report.season!.dampest.insertion - report.season!.made.insertion;
    expect(problem!.figures!.moves).toBeCloseTo(moves * Math.sin((lean * Math.PI) / 180), 9);
    expect(report.season!.door).toBe('A');
    const roomy = evaluate(read(text.replace('endGap: 0.5', `endGap: ${problem!.figures!.wanted}`)).job!);
    expect(roomy.problems.map(({ code }) => code)).not.toContain('head-bottoms-out');
  });
});

it('shrinks out of the groove beside a steep head before it does at its sides', () => {
  const text = job('{ shape: arch, rise: 190 }')
    .replace('swellGap: 2', 'swellGap: 1, endGap: 6.9')
    .replace('doors:', 'season: { made: 12, driest: 6, dampest: 12 }\ndoors:');
  const evaluated = (of: string) => evaluate(readJob(of, { shop: SHOP }).job!);
  const report = evaluated(text);
  const [problem] = report.problems.filter(({ code }) => code === 'head-leaves-groove');
  const shrinks = report.season!.made.insertion - report.season!.driest.insertion;
  const lean = (report.doors![0]!.head!.lean * Math.PI) / 180;
  expect(problem!.figures!.left).toBeCloseTo(11 - 6.9 - shrinks * Math.sin(lean), 9);
  expect(evaluated(text.replace('endGap: 6.9', 'endGap: 2')).problems.map(({ code }) => code)).not.toContain(
    'head-leaves-groove',
  );
});

describe('a head of any outline', () => {
  const read = (head: string) => readJob(job(head), { shop: SHOP });
  const arcsOf = (path: string) =>
    readReportPath(path)[0]!
      .filter(({ turn }) => turn !== 0)
      .map(({ cx, cy, r }) => [cx, cy, r]);

  /** A cathedral's sight edge as path data, x from the opening's left side, y down from the apex. */
  function cathedralPath({ rise, crown, ears }: typeof CATHEDRAL, width: number): string {
    const foot = Math.sqrt((crown + ears) ** 2 - (crown + ears - rise) ** 2);
    const [dx, dy] = [(foot * crown) / (crown + ears), (rise * crown) / (crown + ears)];
    const middle = width / 2;
    return `M 0 ${rise} H ${middle - foot} A ${ears} ${ears} 0 0 0 ${middle - dx} ${dy} A ${crown} ${crown} 0 0 1 ${middle + dx} ${dy} A ${ears} ${ears} 0 0 0 ${middle + foot} ${rise} H ${width}`;
  }

  it('is what an arch and a cathedral are, where it draws them', () => {
    const pairs = [
      ['{ shape: arch, rise: 60 }', `M 0 60 A ${archRadius(400, 60)} ${archRadius(400, 60)} 0 0 1 400 60`],
      ['{ shape: cathedral, rise: 60, crown: 120, ears: 80 }', cathedralPath(CATHEDRAL, 400)],
    ] as const;
    for (const [named, path] of pairs) {
      const [one, other] = [named, `{ shape: outline, path: "${path}" }`].map(
        (head) => evaluate(read(head).job!).doors![0]!,
      );
      expect(other!.head!.rise).toBeCloseTo(60, 9);
      expect(other!.head!.area).toBeCloseTo(one!.head!.area, 4);
      expect(other!.head!.length).toBeCloseTo(one!.head!.length, 6);
      expect(other!.head!.lean).toBeCloseTo(one!.head!.lean, 6);
      expect(other!.panels[0]!.volume / one!.panels[0]!.volume).toBeCloseTo(1, 9);
      for (const of of ['sight', 'panelEdge', 'field'] as const) {
        const [mine, theirs] = [arcsOf(other!.head!.paths[of]!), arcsOf(one!.head!.paths[of]!)];
        expect(mine).toHaveLength(theirs.length);
        mine.forEach((arc, i) => {
          arc.forEach((figure, k) => {
            expect(figure).toBeCloseTo(theirs[i]![k]!, 5);
          });
        });
      }
    }
  });

  it('has its least radii reported, and its hollow corners refused a bearing', () => {
    const smooth = evaluate(read(`{ shape: outline, path: "${cathedralPath(CATHEDRAL, 400)}" }`).job!);
    const { panelEdge, field } = smooth.doors![0]!.head!;
    expect(panelEdge).toMatchObject({ round: expect.closeTo(129, 5), hollow: expect.closeTo(71, 5) });
    expect(field).toMatchObject({ round: expect.closeTo(91, 5), hollow: expect.closeTo(109, 5) });
    // Two level steps: the lower corner is hollow in the panel.
    const stepped = evaluate(read('{ shape: outline, path: "M 0 50 H 80 L 120 0 H 280 L 320 50 H 400" }').job!);
    expect(stepped.doors![0]!.head!.panelEdge).toEqual({ round: null, hollow: 0 });
    expect(stepped.problems.map(({ code }) => code)).toContain('head-too-hollow');
  });

  it('lies square to its edge everywhere, corners and all', () => {
    const stepped = evaluate(read('{ shape: outline, path: "M 0 50 H 80 L 120 0 H 280 L 320 50 H 400" }').job!);
    const [sight] = readReportPath(stepped.doors![0]!.head!.paths.sight);
    const [edge] = readReportPath(stepped.doors![0]!.head!.paths.panelEdge);
    // Each side of the sight edge has one of the panel's 9 mm outside it and parallel to it.
    for (const c of sight!) {
      const length = Math.hypot(c.x1 - c.x0, c.y1 - c.y0);
      const [nx, ny] = [(c.y1 - c.y0) / length, -(c.x1 - c.x0) / length];
      const beside = edge!.filter((e) => {
        const away = (x: number, y: number) => (x - c.x0) * nx + (y - c.y0) * ny;
        return Math.abs(away(e.x0, e.y0) - 9) < 1e-6 && Math.abs(away(e.x1, e.y1) - 9) < 1e-6;
      });
      expect(beside.length).toBeGreaterThan(0);
    }
  });

  it.each([
    ['{ shape: outline, path: "M 0 60 H 300" }', 'is level'],
    [
      '{ shape: outline, path: "M 0 60 L 200 0 L 300 60" }',
      'does not run from one side of the opening to the other, 400 mm',
    ],
    ['{ shape: outline, path: "M 400 60 L 200 0 L 0 60" }', 'does not run from one side'],
    ['{ shape: outline, path: "M 0 60 L 300 0 L 100 0 L 400 60" }', 'crosses itself'],
    ['{ shape: outline, path: "M 0 60 H 120 L 80 0 H 320 L 280 60 H 400" }', 'the path turns back'],
    ['{ shape: outline, path: "M 0 60 H 180 A 30 30 0 1 1 220 60 H 400" }', 'the path turns back'],
    ['{ shape: outline, path: "M 0 60 L 200 0 L 400 60 Z" }', 'is closed'],
    ['{ shape: outline, path: "M 0 60 L 200 0 M 200 0 L 400 60" }', 'lifts and starts again'],
    ['{ shape: outline, path: "M 0 60 Q" }', 'not SVG path data'],
    ['{ shape: outline, rise: 60, path: "M 0 60 L 200 0 L 400 60" }', 'rise is not used'],
    ['{ shape: outline }', 'path is missing'],
    [
      `{ shape: outline, path: "M 0 60 ${Array.from({ length: 2001 }, (_, i) => `L ${(i + 1) * 0.19} ${60 - (i % 2)}`).join(' ')} L 400 0" }`,
      'up to 2000 are computed',
    ],
  ])('is refused for %s', (head, words) => {
    expect(
      read(head)
        .faults.map(({ message }) => message)
        .join('\n'),
    ).toContain(words);
  });
});

it.each([
  ['a half circle with less gap at the sides than at the ends', '{ shape: arch, rise: 200 }', 'endGap: 4'],
  ['ears smaller than what goes into the groove', '{ shape: cathedral, rise: 20, crown: 100, ears: 5 }', 'endGap: 1'],
  ['an outline with upright ends', '{ shape: outline, path: "M 0 60 V 20 L 200 0 L 400 20 V 60" }', 'endGap: 4'],
])('%s has a panel', (_, head, gap) => {
  const { job: made } = readJob(job(head).replace('swellGap: 2', `swellGap: 2, ${gap}`), { shop: SHOP });
  const report = evaluate(made!);
  const { head: shaped, panel, panels } = report.doors![0]!;
  // Less than the square blank, more than without the whole head.
  expect(shaped!.area).toBeLessThan(panel.width * panel.height);
  expect(shaped!.area).toBeGreaterThan(panel.width * (panel.height - shaped!.rise - 12));
  expect(panels[0]!.volume).toBeGreaterThan(0);
});
