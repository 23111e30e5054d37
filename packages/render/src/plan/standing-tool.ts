import type { SetUp } from '@fielded/core';
import { type Box, type Curve, type Loop, loopsBox, polygon } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import { sayPlan } from '../words/english/plan.ts';
import type { InVoice } from '../words/lengths.ts';

/** The tool in the section: spindle, head, nut and knives, and where the table is open around it. Paper mm. */
export interface ToolPlace {
  readonly items: readonly Item[];
  readonly outlines: readonly Curve[];
  /** What turns beyond the body, closed. */
  readonly knives: readonly Loop[];
  readonly box: Box;
  readonly opening: { readonly left: number; readonly right: number };
}

const NUT = 7;
/** Height of the bearing that follows the inside of a frame, paper mm. */
const BEARING = 6;
const SPINDLE_BELOW = 9;
/** A spindle that the shop does not describe is drawn this thick, mm of wood. */
const USUAL_SPINDLE = 30;
const BESIDE_SPINDLE = 3;

/** Along the spindle (u, up) and square to it towards the stock (v), paper mm, to the paper. */
type Place = (u: number, v: number) => readonly [number, number];

/**
 * Draws the tool standing for a set-up: the fence's line at x = 0, the table's top at y = `table`. `swept` is the cut's edge
 * on the paper. Of two heads on one spindle each is drawn for itself, `lower` and `upper`. A head whose seat is not known is drawn dashed, its deepest point at its face.
 */
export function standingTool(
  setUp: SetUp,
  swept: readonly Curve[],
  table: number,
  scale: number,
  voice: InVoice,
  stands: 'alone' | 'lower' | 'upper' = 'alone',
): ToolPlace {
  const place = placer(setUp, table, scale);
  const shape = shapeTool(setUp, place, scale, stands);
  const { head, bearing, nut, axis } = shape;
  const knives = knifeLoop(swept, place, shape.body);
  return {
    items: drawTool(setUp, shape, knives, place, voice, stands),
    knives: [{ curves: [...knives.curves, ...closing(knives.curves)], closed: true }],
    outlines: [...head.curves, ...knives.curves, ...bearing.flatMap(({ curves }) => curves)],
    box: loopsBox([head, ...bearing, nut.whole, axis])!,
    opening: openingUnder(setUp, scale),
  };
}

/** The parts of a standing tool on the paper; `seat`, `top` and `clamped` are heights along the spindle, `body` and `bearingHalf` half widths, paper mm. */
interface ToolShape {
  readonly seat: number;
  readonly top: number;
  readonly clamped: number;
  readonly body: number;
  readonly bearingHalf: number;
  readonly head: Loop;
  readonly bearing: readonly Loop[];
  readonly spindle: Loop;
  /** The nut, and all of the tool at the nut's width. */
  readonly nut: { readonly own: Loop; readonly whole: Loop };
  readonly axis: Loop;
}

function shapeTool(setUp: SetUp, place: Place, scale: number, stands: 'alone' | 'lower' | 'upper'): ToolShape {
  const { tool, fence, run } = setUp;
  // A head whose seat is not known stands with its face at its deepest point.
  const under = run === 'under' || setUp.presented === 90;
  const assumed = under ? setUp.cuttingPoint - tool.height : setUp.cuttingPoint;
  const seat = (setUp.seat ?? assumed) * scale;
  const top = seat + tool.height * scale;
  const body = (tool.bodyDiameter / 2) * scale;
  const nut = (tool.nutDiameter / 2) * scale;
  const box = (u0: number, u1: number, half: number): Loop =>
    polygon([place(u0, -half), place(u1, -half), place(u1, half), place(u0, half)]);
  const bearingHalf = fence.toAxis * scale;
  const bearing = setUp.frame?.kind === 'back edge' ? [box(top, top + BEARING, bearingHalf)] : [];
  const clamped = top + (bearing.length > 0 ? BEARING : 0);
  // Of two heads the lower one has the spindle's foot and the upper one the nut.
  const below = Math.min(seat, 0) - SPINDLE_BELOW;
  const [foot, end] = [stands === 'upper' ? seat : below, stands === 'lower' ? clamped : clamped + NUT];
  return {
    seat,
    top,
    clamped,
    body,
    bearingHalf,
    head: box(seat, top, body),
    bearing,
    spindle: box(foot, seat, spindleRadius(setUp) * scale),
    nut: { own: box(clamped, end, nut), whole: box(foot, end, nut) },
    axis: stroke(...place(foot - (stands === 'upper' ? 0 : 2), 0), ...place(end + (stands === 'lower' ? 0 : 4), 0)),
  };
}

function spindleRadius({ tool }: SetUp): number {
  return (tool.spindle ?? USUAL_SPINDLE) / 2;
}

function drawTool(
  setUp: SetUp,
  { seat, top, clamped, body, bearingHalf, head, bearing, spindle, nut, axis }: ToolShape,
  knives: Loop,
  place: Place,
  voice: InVoice,
  stands: 'alone' | 'lower' | 'upper',
): Item[] {
  // Each word in the middle of the half in front of the axis, smaller where it would be wider than the half is.
  const word = (key: string, u: number, words: string, half: number) =>
    text(key, 'quiet', ...place(u, -half / 2), words, Math.min(2.5, (half - 1) / textWidth(words, 1)), 'middle');
  return [
    ...(stands === 'upper' ? [] : [path('spindle', 'fine', [spindle])]),
    path('head fill', 'paper', [head]),
    path('head', setUp.seat === null ? 'hidden' : 'fine', [head]),
    ...(stands === 'lower' ? [] : [path('nut', 'fine', [nut.own])]),
    ...(bearing.length > 0
      ? [
          path('bearing', 'judged', bearing),
          word('bearing word', clamped - BEARING + 1.6, sayPlan('picture.bearing', {}, voice), bearingHalf),
        ]
      : []),
    path('knives', 'cutter', [knives]),
    path('axis', 'cutter', [axis]),
    word('head word', (seat + top) / 2 - 1, sayPlan('picture.head', {}, voice), body),
  ];
}

/** The hole in the table: its ring's, or what the head needs, or room for the spindle. */
function openingUnder(setUp: SetUp, scale: number): ToolPlace['opening'] {
  const ring = setUp.hole?.ring ?? setUp.hole?.needed;
  const half = ring === undefined ? spindleRadius(setUp) * scale + BESIDE_SPINDLE : (ring / 2) * scale;
  const centre = -setUp.fence.toAxis * scale;
  return { left: centre - half, right: centre + half };
}

/** The axis passes through the table `toAxis` from the fence; under the stock a tilted spindle's top leans away from it. */
function placer({ fence, presented, run }: SetUp, table: number, scale: number): Place {
  const tilt = presented === 90 ? 0 : (presented * Math.PI) / 180;
  const [sin, cos] = [Math.sin(tilt), Math.cos(tilt)];
  const lean = run === 'under' ? -sin : sin;
  return (u, v) => [-fence.toAxis * scale + u * lean + v * cos, table - u * cos + v * lean];
}

/** The stroke that closes curves. */
function closing(curves: readonly Curve[]): readonly Curve[] {
  const [first, last] = [curves[0], curves.at(-1)];
  return first && last ? stroke(last.x1, last.y1, first.x0, first.y0).curves : [];
}

/** What turns beyond the head's body, as far as it is cut: from the body out to the cut's edge and back. */
function knifeLoop(swept: readonly Curve[], place: Place, body: number): Loop {
  const first = swept[0];
  const last = swept.at(-1);
  if (first === undefined || last === undefined) return { curves: [], closed: false };
  const [ax, ay] = place(0, body);
  const [bx, by] = place(1, body);
  // The foot on the body's side of a point beside it.
  const foot = (x: number, y: number): readonly [number, number] => {
    const along = (x - ax) * (bx - ax) + (y - ay) * (by - ay);
    return [ax + along * (bx - ax), ay + along * (by - ay)];
  };
  return {
    curves: [
      ...stroke(...foot(first.x0, first.y0), first.x0, first.y0).curves,
      ...swept,
      ...stroke(last.x1, last.y1, ...foot(last.x1, last.y1)).curves,
    ],
    closed: false,
  };
}
