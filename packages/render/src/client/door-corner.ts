import type { Report } from '@fielded/core';
import { type Loop, polygon, readLoops } from '@fielded/geometry';
import { type Item, path, type Role } from '../scene.ts';
import { drawPanelPart } from '../views/panel-part.ts';
import { standPanel } from '../views/stand.ts';
import { chordPoints, frontSurface, loopPoints, type SurfacePoint } from './front-surface.ts';

/** Depth is drawn up and to the right, at this share of its length each way (cabinet projection, ISO 5456-3: 45°, half length). */
const RECEDING = 0.5 * Math.SQRT1_2;

/** A point of the door: x right, y up, d behind the frame's front face, wood mm. */
type Place = readonly [x: number, y: number, d: number];

/** Where the light comes from: over the left shoulder. */
const LIGHT = normalise([-1, 1, 1.6]);

/** Two neighbouring facets that turn by more than this are parted by a drawn line, radians. */
const ARRIS = (12 * Math.PI) / 180;

/**
 * The bottom left corner of the first door in cabinet projection, cut across stile and rail so that both sections show.
 *
 * Everything is the report's own section: the raise runs along both edges and is mitred where they meet. Facets are painted
 * from the corner inwards, so that nearer ones cover those behind. Stile and rail are the door's; `scale` is paper mm for a
 * mm of wood. No items where the report has no door or its tongue does not enter.
 */
export function drawDoorCorner(report: Report, scale: number): Item[] {
  const door = report.doors?.[0];
  const part = drawPanelPart(report, { scale: 1, x: 0, y: 0 });
  const section = part.section[0];
  const stand = standPanel(report, part, 0, 'middle');
  if (door === undefined || section === undefined || stand.inserted === null) return [];
  const { stile, bottomRail: rail } = door;
  const surface = frontSurface(section, stand.inserted).map(({ a, d }) => ({ a, d: d - stand.front }));
  const [left, bottom] = [stile - stand.inserted, rail - stand.inserted];
  const far: Place = [left + part.right, bottom + part.right, 0];
  const put = placer(scale);
  const lipFace = lipSurface(report, surface[0]!.d);
  const panel = [loopPoints(section)];
  return [
    ...drawFaces(put, { stile, rail, back: lipFace[0]!.a, far }),
    ...drawLeg('sticking of the rail', put, lipFace, { x: stile, y: rail, far, along: 'rail' }),
    ...drawLeg('sticking of the stile', put, lipFace, { x: stile, y: rail, far, along: 'stile' }),
    ...drawLeg('raise along the rail', put, surface, { x: left, y: bottom, far, along: 'rail' }),
    ...drawLeg('raise along the stile', put, surface, { x: left, y: bottom, far, along: 'stile' }),
    path('mitre', 'thin', [line3(put, mitre(lipFace, stile, rail)), line3(put, mitre(rise(surface), left, bottom))]),
    jointLine(put, stile, rail + lipFace[0]!.a),
    ...cutFace('rail cut', put, frameLoop(report, stile), (a, d) => [far[0], rail - a, d]),
    ...cutFace('panel cut across', put, panel, (a, d) => [far[0], bottom + a, d - stand.front]),
    ...cutFace('stile cut', put, frameLoop(report, stile), (a, d) => [stile - a, far[1], d]),
    ...cutFace('panel cut', put, panel, (a, d) => [left + a, far[1], d - stand.front]),
    path('edge', 'fine', [
      line3(put, [
        [far[0], 0, 0],
        [0, 0, 0],
        [0, far[1], 0],
      ]),
    ]),
  ];
}

/** The front faces of stile and rail, as far as the sticking leaves them: `back` of it from the sight edge, negative. */
function drawFaces(
  put: Put,
  { stile, rail, back, far: [right, top] }: { stile: number; rail: number; back: number; far: Place },
): Item[] {
  const face = (key: string, x0: number, y0: number, x1: number, y1: number) =>
    path(key, toneOf([0, 0, 1]), [polygon([put([x0, y0, 0]), put([x1, y0, 0]), put([x1, y1, 0]), put([x0, y1, 0])])]);
  return [face('stile', 0, 0, stile + back, top), face('rail', stile + back, 0, right, rail + back)];
}

/** Where the rail meets the stile, up to where the sticking begins. */
function jointLine(put: Put, stile: number, top: number): Item {
  return path('joint', 'thin', [
    line3(put, [
      [stile, 0, 0],
      [stile, top, 0],
    ]),
  ]);
}

type Put = (place: Place) => readonly [number, number];

/** Cabinet projection on to the paper, y down. */
function placer(scale: number): Put {
  return ([x, y, d]) => [scale * (x + RECEDING * d), -scale * (y + RECEDING * d)];
}

/** Where a leg of a surface runs: from (x, y) along the stile or along the rail, mitred at the corner. */
interface Run {
  readonly x: number;
  readonly y: number;
  readonly far: Place;
  readonly along: 'stile' | 'rail';
}

/**
 * A surface along one part of the frame. Each stretch of one tone is painted from its start to the surface's end and the next
 * one over it, so that no gap shows between them; an arris is drawn before what lies in front of it.
 */
function drawLeg(key: string, put: Put, surface: readonly SurfacePoint[], { x, y, far, along }: Run): Item[] {
  const items: Item[] = [];
  const corner = ({ a, d }: SurfacePoint): Place => [x + a, y + a, d];
  const end = ({ a, d }: SurfacePoint): Place => (along === 'stile' ? [x + a, far[1], d] : [far[0], y + a, d]);
  let painted: Role | undefined;
  for (let i = 1; i < surface.length; i++) {
    const [from, to] = [surface[i - 1]!, surface[i]!];
    const tone = toneOf(facetNormal(from, to, along));
    const rest = surface.slice(i - 1);
    const before = surface[i - 2];
    if (tone !== painted) {
      const shape = [...rest.map(corner), ...rest.map(end).reverse()];
      items.push(path(`${key} ${i}`, tone, [polygon(shape.map(put))]));
    }
    painted = tone;
    if (before === undefined || Math.abs(turning(before, from, to)) > ARRIS)
      items.push(path(`${key} arris ${i}`, 'thin', [line3(put, [corner(from), end(from)])]));
  }
  return items;
}

/** The angle by which a surface turns at `b`, radians. */
function turning(a: SurfacePoint, b: SurfacePoint, c: SurfacePoint): number {
  const first = Math.atan2(b.d - a.d, b.a - a.a);
  const second = Math.atan2(c.d - b.d, c.a - b.a);
  return Math.atan2(Math.sin(second - first), Math.cos(second - first));
}

/** The normal of a facet along stile or rail; z towards the eye is −d. */
function facetNormal(from: SurfacePoint, to: SurfacePoint, along: Run['along']): Place {
  const [da, dd] = [to.a - from.a, to.d - from.d];
  return normalise(along === 'stile' ? [dd, 0, da] : [0, dd, da]);
}

/** The line in which the two legs of a surface meet. */
function mitre(surface: readonly SurfacePoint[], x: number, y: number): Place[] {
  return surface.map(({ a, d }) => [x + a, y + a, d]);
}

/** A surface without the level field at its far end, over which no mitre runs. */
function rise(surface: readonly SurfacePoint[]): SurfacePoint[] {
  return surface.slice(0, -1);
}

/** The tone of a face by how squarely the light meets it (Lambert): 1 in full light, 8 turned away. */
function toneOf(normal: Place): Role {
  const light = normal[0] * LIGHT[0] + normal[1] * LIGHT[1] + normal[2] * LIGHT[2];
  const step = Math.min(8, Math.max(1, Math.round(1 + (0.95 - light) * 7.5)));
  return `tone-${step}` as Role;
}

/** A section cut through, painted as end grain with its outline. */
function cutFace(
  key: string,
  put: Put,
  loops: readonly (readonly { x: number; y: number }[])[],
  place: (a: number, d: number) => Place,
): Item[] {
  const drawn = loops.map((points) => polygon(points.map(({ x, y }) => put(place(x, y)))));
  return [path(key, 'tone-cut', drawn), path(`${key} outline`, 'fine', drawn)];
}

/** The frame's section, `wide` mm of it: x from the sight edge into the frame, y down from its front face. */
function frameLoop({ frame }: Report, wide: number): { x: number; y: number }[][] {
  const { groove, thickness } = frame;
  const sticking = stickingSurface(frame);
  return [
    [
      { x: wide, y: 0 },
      ...sticking.map(({ a, d }) => ({ x: -a, y: d })),
      { x: 0, y: groove.setback },
      { x: groove.depth, y: groove.setback },
      { x: groove.depth, y: groove.setback + groove.width },
      { x: 0, y: groove.setback + groove.width },
      { x: 0, y: thickness },
      { x: wide, y: thickness },
    ],
  ];
}

/** The lip's face and, down to the raise at the depth `wall`, its edge. */
function lipSurface({ frame }: Report, wall: number): SurfacePoint[] {
  const sticking = stickingSurface(frame);
  return [...sticking, { a: sticking.at(-1)!.a, d: wall }];
}

/** The lip's face from where the sticking leaves the front face to the sight edge: `a` 0 at the sight edge, negative in the frame. */
function stickingSurface({ sticking }: Report['frame']): SurfacePoint[] {
  const loop: Loop | undefined = sticking === null ? undefined : readLoops(sticking)[0];
  if (loop === undefined) return [{ a: 0, d: 0 }];
  const first = loop.curves[0]!;
  const points = [{ x: first.x0, y: first.y0 }, ...loop.curves.flatMap(chordPoints)];
  // The path runs from the edge, where it is deepest, to the face.
  return points.map(({ x, y }) => ({ a: -x, d: y })).reverse();
}

/** A line through places of the door, on the paper. */
function line3(put: Put, places: readonly Place[]): Loop {
  return polygon(places.map(put), false);
}

function normalise([x, y, z]: Place): Place {
  const size = Math.hypot(x, y, z);
  return [x / size, y / size, z / size];
}
