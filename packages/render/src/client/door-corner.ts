import type { Report } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import { type Item, path, type Role } from '../scene.ts';
import { drawPanelPart } from '../views/panel-part.ts';
import { standPanel } from '../views/stand.ts';
import { facetNormal, line3, type Place, type Put, placer, toneOf } from './cabinet-projection.ts';
import { frameLoop, lipSurface } from './frame-section.ts';
import { frontSurface, loopPoints, type SurfacePoint } from './front-surface.ts';

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

/** The line in which the two legs of a surface meet. */
function mitre(surface: readonly SurfacePoint[], x: number, y: number): Place[] {
  return surface.map(({ a, d }) => [x + a, y + a, d]);
}

/** A surface without the level field at its far end, over which no mitre runs. */
function rise(surface: readonly SurfacePoint[]): SurfacePoint[] {
  return surface.slice(0, -1);
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
