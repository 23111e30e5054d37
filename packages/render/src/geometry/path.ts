import type { Curve } from '@fielded/geometry';
import type { Box } from './box.ts';
import { joinBoxes } from './box.ts';
import { arcAngles, curveBox, line } from './curves.ts';

/** Curves joined end to start; `closed` when the last one ends where the first starts and the two bound something. */
export interface Loop {
  readonly curves: readonly Curve[];
  readonly closed: boolean;
}

/** Where and how large something is put: every point is scaled, mirrored left for right if asked, then moved. */
export interface Placing {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
  readonly mirrored?: boolean;
}

/**
 * Reads the SVG path data of a report (absolute M, L, A, Z; circular arcs) as loops of lines and arcs.
 *
 * Empty text gives no loops; a step of no length is left out.
 *
 * @throws RangeError on any other command.
 * @example parsePath('M0 0L10 0A10 10 0 0 1 0 10Z')[0].curves.length // 3
 */
export function parsePath(data: string): Loop[] {
  const words = data.match(/[a-z]|[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? [];
  const loops: Loop[] = [];
  let curves: Curve[] = [];
  let [startX, startY, x, y] = [0, 0, 0, 0];
  let command = '';
  let at = 0;
  const next = () => Number(words[at++]);
  const finish = (closed: boolean) => {
    if (closed && (x !== startX || y !== startY)) curves.push(line(x, y, startX, startY));
    if (curves.length) loops.push({ curves, closed });
    curves = [];
  };
  while (at < words.length) {
    const word = words[at]!;
    if (/[a-z]/i.test(word[0]!)) {
      command = word;
      at += 1;
    } else if (command === 'M') command = 'L';
    if (command === 'M') {
      finish(false);
      [startX, startY] = [next(), next()];
      [x, y] = [startX, startY];
    } else if (command === 'L') {
      const [toX, toY] = [next(), next()];
      if (toX !== x || toY !== y) curves.push(line(x, y, toX, toY));
      [x, y] = [toX, toY];
    } else if (command === 'A') {
      const radius = next();
      at += 2;
      const [large, clockwise, toX, toY] = [next() === 1, next() === 1, next(), next()];
      if (toX !== x || toY !== y) curves.push(arcThrough(x, y, toX, toY, radius, large, clockwise));
      [x, y] = [toX, toY];
    } else if (command === 'Z' || command === 'z') {
      finish(true);
      [x, y] = [startX, startY];
    } else throw new RangeError(`path command ${command || word} in ${data.slice(0, 60)}`);
  }
  finish(false);
  return loops;
}

/** The arc of an SVG `A` command with its centre, after the SVG 2 specification, appendix B.2.4; a radius too small for the chord becomes half the chord. */
function arcThrough(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  radius: number,
  large: boolean,
  clockwise: boolean,
): Curve {
  const halfX = (x1 - x0) / 2;
  const halfY = (y1 - y0) / 2;
  const half = Math.hypot(halfX, halfY);
  const r = Math.max(Math.abs(radius), half);
  const height = Math.sqrt(Math.max(0, r * r - half * half)) / half;
  const side = large === clockwise ? 1 : -1;
  const cx = x0 + halfX + side * height * halfY;
  const cy = y0 + halfY - side * height * halfX;
  return { x0, y0, x1, y1, cx, cy, r, turn: clockwise ? 1 : -1 };
}

/** Loops scaled, mirrored and moved. */
export function placeLoops(loops: readonly Loop[], placing: Placing): Loop[] {
  const { scale, x, y } = placing;
  const across = placing.mirrored ? -scale : scale;
  return loops.map((loop) => ({
    closed: loop.closed,
    curves: loop.curves.map((curve) => ({
      x0: x + across * curve.x0,
      y0: y + scale * curve.y0,
      x1: x + across * curve.x1,
      y1: y + scale * curve.y1,
      cx: x + across * curve.cx,
      cy: y + scale * curve.cy,
      r: scale * curve.r,
      turn: (placing.mirrored ? -curve.turn : curve.turn) as Curve['turn'],
    })),
  }));
}

/** The same curves run backwards. */
export function reverseCurves(curves: readonly Curve[]): Curve[] {
  return curves
    .map((curve) => ({
      ...curve,
      x0: curve.x1,
      y0: curve.y1,
      x1: curve.x0,
      y1: curve.y0,
      turn: (curve.turn === 0 ? 0 : -curve.turn) as Curve['turn'],
    }))
    .reverse();
}

/** The smallest box round the loops; null round none. */
export function loopsBox(loops: readonly Loop[]): Box | null {
  return joinBoxes(loops.flatMap((loop) => loop.curves.map(curveBox)));
}

/** Whether an arc is more than half a circle, as SVG's large-arc flag has it. */
export function isLargeArc(curve: Curve): boolean {
  return Math.abs(arcAngles(curve).sweep) > Math.PI;
}

/** A loop through corner points, closed unless told. */
export function polygon(points: readonly (readonly [number, number])[], closed = true): Loop {
  const curves: Curve[] = [];
  for (let i = 1; i < points.length; i += 1) curves.push(line(...points[i - 1]!, ...points[i]!));
  if (closed && points.length > 1) curves.push(line(...points[points.length - 1]!, ...points[0]!));
  return { curves, closed };
}

/** The four sides of a box, closed. */
export function rectangle({ x0, y0, x1, y1 }: Box): Loop {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}
