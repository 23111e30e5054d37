// Unseen arches, cathedrals and free outlines through the whole way from a job file, against circles worked out here, against
// clipper2-ts (offsets of a fine polygon) and @flatten-js/core (distances), and templates read back by the library dxf.
import { answerDoors, type DoorReport, prepareJob, readJob, templateOutline } from '@fielded/core';
import { writeDxf } from '@fielded/exchange';
import { type Chain, curveLength, pointAt, readReportPath } from '@fielded/geometry';
import flatten from '@flatten-js/core';
import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { Helper } from 'dxf';
import { describe, expect, it } from 'vitest';
import { Random } from '../support/random.ts';

const REACH = 38;
const DEPTH = 11;
const INCH = 25.4;

/** An arc of a head's sight edge: x from the opening's middle, y up from the springing, mm; `round` where the wood below it bulges. */
interface SightArc {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly round: boolean;
}

interface Sample {
  readonly door: DoorReport;
  readonly arcs: readonly SightArc[];
  readonly swellGap: number;
  readonly endGap: number;
  readonly opening: number;
  readonly height: number;
  readonly rise: number;
}

/** A door of the job whose opening is `opening` by `height` mm under a head written as in a file, in mm or in inches. */
function makeDoor(random: Random, head: string, opening: number, height: number, units: 'mm' | 'in') {
  const [swellGap, endGap] = [random.between(0.5, 3), random.between(0.5, 3)];
  const say = (mm: number) => (units === 'mm' ? String(mm) : String(mm / INCH));
  const text = `fielded: 1
units: ${units}
panel: { thickness: 20 mm }
frame: { thickness: 22 mm, groove: { width: 6.4 mm, depth: ${DEPTH} mm, setback: 7.5 mm }, swellGap: ${swellGap} mm, endGap: ${endGap} mm }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: ${REACH} mm, depth: 9 mm, land: 11 mm } }
  - { name: back, side: back, profile: { shape: cove, reach: 14 mm, depth: 4.9 mm, land: 9 mm }, run: over }
doors: [{ name: A, width: ${say(opening + 120)}, height: ${say(height + 150)}, stile: ${say(60)}, rail: ${say(75)}, head: ${head} }]
`;
  const { job, faults } = readJob(text);
  if (job === null) throw new Error(faults.map(({ message }) => message).join('\n'));
  return { door: answerDoors(prepareJob(job))!.doors[0]!, swellGap, endGap, opening, height };
}

function randomArch(random: Random, units: 'mm' | 'in'): Sample {
  const opening = random.between(250, 700);
  const rise = random.between(0.02, 0.45) * opening;
  // Through both springings and the apex: intersecting chords.
  const r = (opening ** 2 / 4 / rise + rise) / 2;
  const head = `{ shape: arch, rise: ${units === 'mm' ? rise : rise / INCH} }`;
  const made = makeDoor(random, head, opening, random.between(900, 1500), units);
  return { ...made, rise, arcs: [{ x: 0, y: rise - r, r, round: true }] };
}

function randomCathedral(random: Random, units: 'mm' | 'in'): Sample {
  const [crown, ears] = [random.between(60, 250), random.between(30, 160)];
  const rise = random.between(0.1, 0.6) * (crown + ears);
  // The centres lie r₁ + r₂ apart, the one ears over the springing, the other crown under the apex.
  const foot = Math.sqrt((crown + ears) ** 2 - (ears - rise + crown) ** 2);
  const opening = 2 * foot + random.between(0, 200);
  const [h, c, e] = [rise, crown, ears].map((mm) => (units === 'mm' ? mm : mm / INCH));
  const made = makeDoor(random, `{ shape: cathedral, rise: ${h}, crown: ${c}, ears: ${e} }`, opening, 1400, units);
  const arcs = [
    { x: -foot, y: ears, r: ears, round: false },
    { x: 0, y: rise - crown, r: crown, round: true },
    { x: foot, y: ears, r: ears, round: false },
  ];
  return { ...made, rise, arcs };
}

/** Two humps of uneven sides with flats between, tangent everywhere, as path data with y down. */
function randomOutline(random: Random): Sample {
  const pieces: { dx: number; dy: number; r: number; turn: -1 | 0 | 1; cx: number; cy: number }[] = [];
  let [x, y] = [0, 0];
  const flat = (long: number) => {
    pieces.push({ dx: long, dy: 0, r: 0, turn: 0, cx: 0, cy: 0 });
    x += long;
  };
  // From one heading to another on a circle: turn +1 anticlockwise, y up.
  const bend = (r: number, from: number, to: number, turn: -1 | 1) => {
    const [cx, cy] = [x - turn * r * Math.sin(from), y + turn * r * Math.cos(from)];
    const [x1, y1] = [cx + turn * r * Math.sin(to), cy - turn * r * Math.cos(to)];
    pieces.push({ dx: x1 - x, dy: y1 - y, r, turn, cx, cy });
    [x, y] = [x1, y1];
  };
  flat(random.between(5, 60));
  for (let hump = 0; hump < 2; hump++) {
    const [a, crown, b] = [random.between(60, 120), random.between(50, 150), random.between(60, 120)];
    const up = random.between(0.3, 0.9);
    // Both sides of a hump are as high as each other.
    const down = Math.acos(1 - ((a + crown) * (1 - Math.cos(up))) / (b + crown));
    bend(a, 0, up, 1);
    bend(crown, up, -down, -1);
    bend(b, -down, 0, 1);
    flat(random.between(5, 60));
  }
  const opening = x;
  const tops = pieces.filter(({ turn }) => turn === -1).map(({ cy, r }) => cy + r);
  const rise = Math.max(...tops);
  const path = pieces.reduce(
    (data, { dx, dy, r, turn }) =>
      `${data} ${turn === 0 ? `h ${dx}` : `a ${r} ${r} 0 0 ${turn === 1 ? 0 : 1} ${dx} ${-dy}`}`,
    `M 0 ${rise}`,
  );
  const arcs = pieces
    .filter(({ turn }) => turn !== 0)
    .map(({ cx, cy, r, turn }) => ({ x: cx - opening / 2, y: cy, r, round: turn === -1 }));
  return { ...makeDoor(random, `{ shape: outline, path: "${path}" }`, opening, 1400, 'mm'), rise, arcs };
}

const random = new Random(2026);
const NAMED = Array.from({ length: 30 }, (_, n) =>
  (n % 2 === 0 ? randomArch : randomCathedral)(random, n % 3 === 0 ? 'in' : 'mm'),
);
const FREE = Array.from({ length: 6 }, () => randomOutline(random));

/** Arcs of a path with the circle's centre from the opening's middle and the springing up, as the sight arcs have them. */
function arcsOf({ door, endGap, rise }: Sample, path: string): SightArc[] {
  const [chain] = readReportPath(path);
  const springing = DEPTH - endGap + rise;
  return chain!
    .filter(({ turn }) => turn !== 0)
    .map(({ cx, cy, r, y0, y1 }) => {
      // The middle of a round arc lies on the far side of its centre from the wood: above it, where y goes down.
      const round = (y0 + y1) / 2 < cy;
      return { x: cx - door.panel.width / 2, y: springing - cy, r, round };
    });
}

function expectArcs(found: readonly SightArc[], wanted: readonly SightArc[], within: number): void {
  const sorted = (arcs: readonly SightArc[]) => [...arcs].sort((p, q) => p.x - q.x || p.y - q.y);
  expect(found).toHaveLength(wanted.length);
  const [one, other] = [sorted(found), sorted(wanted)];
  one.forEach((arc, k) => {
    const to = other[k]!;
    expect(arc.round).toBe(to.round);
    for (const key of ['x', 'y', 'r'] as const) expect(Math.abs(arc[key] - to[key])).toBeLessThan(within);
  });
}

/** The circles `out` mm outside the sight edge: round ones grow, hollow ones shrink. */
const outside = (arcs: readonly SightArc[], out: number) =>
  arcs.map((arc) => ({ ...arc, r: arc.round ? arc.r + out : arc.r - out }));

describe('unseen heads', () => {
  it('have the circles of plane geometry, sight edge, panel edge and field, to 1e-6 mm', () => {
    for (const sample of NAMED) {
      const { paths } = sample.door.head!;
      const insertion = DEPTH - sample.endGap;
      expectArcs(arcsOf(sample, paths.sight), sample.arcs, 1e-6);
      const edge = outside(sample.arcs, insertion);
      if (edge.every(({ r }) => r > 0)) expectArcs(arcsOf(sample, paths.panelEdge), edge, 1e-6);
      const field = outside(sample.arcs, insertion - REACH);
      if (field.every(({ r }) => r > 0)) expectArcs(arcsOf(sample, paths.field!), field, 1e-6);
    }
  });

  it('have them as free outlines too, each arc of it about its own centre', () => {
    for (const sample of FREE) {
      const { paths } = sample.door.head!;
      const insertion = DEPTH - sample.endGap;
      expectArcs(arcsOf(sample, paths.panelEdge), outside(sample.arcs, insertion), 1e-6);
      expectArcs(arcsOf(sample, paths.field!), outside(sample.arcs, insertion - REACH), 1e-6);
    }
  });

  it('have the area of a rectangle and what the circles leave over it', () => {
    for (const { door, arcs, endGap, swellGap, opening, height, rise } of NAMED) {
      const insertion = DEPTH - endGap;
      const half = opening / 2 + DEPTH - swellGap;
      // ∫ of the panel's edge over the foot: each circle's own antiderivative between where it begins and ends.
      const circle = (r: number, x: number) => (x * Math.sqrt(r * r - x * x) + r * r * Math.asin(x / r)) / 2;
      const springing = height - rise + insertion + DEPTH - endGap - insertion;
      let area: number;
      if (arcs.length === 1) {
        const { r, y } = arcs[0]!;
        if (r + insertion < half) continue;
        area = 2 * (half * (springing + y) + circle(r + insertion, half));
      } else {
        const [ear, crown] = [arcs[2]!, arcs[1]!];
        if (ear.r <= insertion) continue;
        const turn = (ear.x * (crown.r + insertion)) / (crown.r + ear.r);
        if (ear.x > half) continue;
        const under = circle(ear.r - insertion, 0) - circle(ear.r - insertion, turn - ear.x);
        area =
          2 *
          (turn * (springing + crown.y) +
            circle(crown.r + insertion, turn) +
            (ear.x - turn) * (springing + ear.y) -
            under +
            (half - ear.x) * (springing + insertion));
      }
      expect(Math.abs(door.head!.area / area - 1)).toBeLessThan(1e-9);
    }
  });
});

/** Points along a closed chain, chords no further than `chord` from it. */
function flattened(chain: Chain, chord: number): { x: number; y: number }[] {
  return chain.flatMap((c) => {
    const steps = c.turn === 0 ? 1 : Math.ceil(curveLength(c) / c.r / (2 * Math.acos(1 - chord / c.r)));
    return Array.from({ length: steps }, (_, k) => ({ ...pointAt(c, k / steps) }));
  });
}

function asFlatten(c: Chain[number]) {
  if (c.turn === 0) return new flatten.Segment(new flatten.Point(c.x0, c.y0), new flatten.Point(c.x1, c.y1));
  const angle = (x: number, y: number) => Math.atan2(y - c.cy, x - c.cx);
  return new flatten.Arc(new flatten.Point(c.cx, c.cy), c.r, angle(c.x0, c.y0), angle(c.x1, c.y1), c.turn > 0);
}

/** The least distance of a point from a ring of points. */
function toRing(ring: readonly { x: number; y: number }[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const u = Math.min(1, Math.max(0, ((x - p.x) * dx + (y - p.y) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(x - p.x - u * dx, y - p.y - u * dy));
  });
  return least;
}

describe('a field within its panel', () => {
  const panels = [...NAMED.slice(0, 8), ...FREE].flatMap(({ door }) => {
    const { panelEdge, field } = door.head!.paths;
    return field === null ? [] : [{ edge: readReportPath(panelEdge)[0]!, field: readReportPath(field)[0]! }];
  });
  const along = [0.02, 0.31, 0.5, 0.77, 0.98];

  it('lies where clipper2 puts the offset of a fine polygon, within 1e-4 mm', () => {
    const CHORD = 9e-5;
    for (const { edge, field } of [panels[1]!, panels.at(-1)!]) {
      // y goes down: turned round, the ring runs anticlockwise as clipper2 has it.
      const fine = flattened(edge, CHORD).reverse();
      const inward = areaOfRing(fine) > 0 ? -REACH : REACH;
      const [ring] = inflatePathsD([fine], inward, JoinType.Miter, EndType.Polygon, 2, 8);
      for (const c of field) {
        for (const u of along) {
          const { x, y } = pointAt(c, u);
          expect(toRing(ring!, x, y)).toBeLessThan(1e-4);
        }
      }
    }
  });

  it('is its reach from the edge everywhere, as @flatten-js/core measures it', () => {
    for (const { edge, field } of panels) {
      const shapes = edge.map(asFlatten);
      for (const c of field) {
        for (const u of along) {
          const { x, y } = pointAt(c, u);
          const point = new flatten.Point(x, y);
          expect(Math.abs(Math.min(...shapes.map((shape) => point.distanceTo(shape)[0])) - REACH)).toBeLessThan(1e-6);
        }
      }
    }
  });
});

function areaOfRing(ring: readonly { x: number; y: number }[]): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);
}

/** What the library dxf reads of an arc. */
interface DxfArc {
  readonly type: string;
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

describe('a template', () => {
  it('is read back by another reader with the same arcs', () => {
    for (const sample of [...NAMED, ...FREE]) {
      const { door, endGap, rise, arcs } = sample;
      const insertion = DEPTH - endGap;
      const springing = door.panel.height - insertion - rise;
      for (const [part, out] of [
        ['panel', insertion],
        ['field', insertion - REACH],
        ['rail', 0],
      ] as const) {
        const wanted = outside(arcs, out);
        if (wanted.some(({ r }) => r <= 0)) continue;
        const text = writeDxf([{ name: part, chains: [templateOutline(door, part, REACH)] }]);
        const found = (new Helper(text).parsed.entities as DxfArc[]).filter(({ type }) => type === 'ARC');
        const rail = door.parts.find((each) => each.part === 'top rail')!;
        const [middle, level] = part === 'rail' ? [rail.length / 2, 0] : [door.panel.width / 2, springing];
        const left = [...found].sort((p, q) => p.x - q.x || p.y - q.y);
        const right = [...wanted].sort((p, q) => p.x - q.x || p.y - q.y);
        expect(left).toHaveLength(right.length);
        left.forEach(({ x, y, r }, k) => {
          const to = right[k]!;
          expect(Math.abs(r - to.r)).toBeLessThan(1e-6);
          expect(Math.hypot(x - middle - to.x, y - level - to.y)).toBeLessThan(1e-6);
        });
      }
    }
  });
});
