import type { Report } from '@fielded/core';
import {
  type Curve,
  curveMeetsBox,
  curvesBetween,
  joinCurves,
  type Loop,
  line,
  type Placing,
  placeLoops,
  readLoops,
  rectangle,
  spanAt,
} from '@fielded/geometry';
import { breakLine, levelBreakLine } from '../geometry/break-line.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import type { Item } from '../scene.ts';
import { path } from '../scene.ts';

/** The panel's edge as drawn: paper mm. */
export interface PanelPart {
  readonly items: readonly Item[];
  readonly outlines: readonly Curve[];
  readonly woods: readonly Loop[];
  /** Where the panel is broken off. */
  readonly right: number;
  /** The section in wood mm, x in from the edge, y down from the front face. */
  readonly section: readonly Loop[];
}

export const PANEL_HATCH = 1.8;
/** How much of the field is shown beyond the raise, paper mm at most. */
const FIELD_SHOWN = 24;
const NEAR = 1e-6;

/** The panel's section: wood with its hatch and outline, broken off in the field. */
export function drawPanelPart(report: Report, placing: Placing): PanelPart {
  const { outline, width } = report.section;
  const reach = Math.max(0, ...report.section.cuts.map((cut) => cut.reach));
  const { to, shorten } = shortenTo(width, reach, placing.scale);
  const section = readLoops(outline).map(shorten);
  const woods = placeLoops(section, placing);
  const right = placing.x + placing.scale * to;
  const { edges, breaks } = splitBreaks(woods, { x: right, y: 0 }, false);
  return {
    items: [
      path('wood', 'wood', woods),
      path('hatch', 'hatch', joinCurves(hatchLoops(woods, PANEL_HATCH, true))),
      path('break', 'break', breaks),
      path('outline', 'outline', joinCurves(edges)),
    ],
    outlines: [...edges, ...breaks.flatMap((loop) => loop.curves)],
    woods,
    right,
    section,
  };
}

/** Where the section is broken off in the field, wood mm, and the loops with their far end moved there. */
export function shortenTo(width: number, reach: number, scale: number): { to: number; shorten: (loop: Loop) => Loop } {
  const to = Math.min(width, Math.max(reach + FIELD_SHOWN / scale, 1));
  const nearer = (x: number) => (x > width - NEAR ? to : x);
  const shorten = (loop: Loop) => ({
    ...loop,
    curves: loop.curves.map((curve) => ({ ...curve, x0: nearer(curve.x0), x1: nearer(curve.x1) })),
  });
  return { to, shorten };
}

/** Parts the outline of a section from the line where it is broken off: plumb through `at`, or level. Paper mm. */
export function splitBreaks(
  loops: readonly Loop[],
  at: { x: number; y: number },
  level: boolean,
): { edges: Curve[]; breaks: Loop[] } {
  const near = (a: number, b: number) => Math.abs(a - b) < NEAR;
  const atBreak = (c: Curve) => (level ? near(c.y0, at.y) && near(c.y1, at.y) : near(c.x0, at.x) && near(c.x1, at.x));
  const edges = loops.flatMap((loop) => startAfter(loop.curves, atBreak));
  const breaks = loops.flatMap((loop) => loop.curves.filter(atBreak));
  return { edges, breaks: breaks.map((c) => (level ? levelBreakLine(at.y, c.x0, c.x1) : breakLine(at.x, c.y0, c.y1))) };
}

/** The curves of a loop without those left out, started so that what remains hangs together. */
function startAfter(curves: readonly Curve[], leftOut: (curve: Curve) => boolean): Curve[] {
  const first = curves.findIndex(leftOut);
  const turned = first < 0 ? curves : [...curves.slice(first), ...curves.slice(0, first)];
  return turned.filter((curve) => !leftOut(curve));
}

/** How far in from the edge the cuts of a side leave its face, wood mm; 0 where none takes wood. */
export function cutsEnd({ section }: Report, side: 'front' | 'back'): number {
  return Math.max(0, ...section.cuts.map((cut) => (cut.side === side ? (cut.faceEnd ?? 0) : 0)));
}

/** The wood that the cuts take, as a pale ground with the stock's old edge dashed; it lies under the panel. */
export function drawRemoved(report: Report, placing: Placing, right: number): { items: Item[]; outlines: Curve[] } {
  const { scale, x, y } = placing;
  const bottom = y + scale * report.section.thickness;
  const [front, back] = [cutsEnd(report, 'front') * scale, cutsEnd(report, 'back') * scale];
  const old: Curve[] = [line(x, bottom, x, y)];
  if (front > 0) old.push(line(x, y, x + front, y));
  if (back > 0) old.unshift(line(x + back, bottom, x, bottom));
  const stock = rectangle({ x0: x, y0: y, x1: right, y1: bottom });
  return { items: [path('removed', 'removed', [stock]), path('old', 'old', joinCurves(old))], outlines: old };
}

/** The tongue's faces over the inserted length, paper mm; none where there is no tongue. */
export function tongueFaces(part: PanelPart, placing: Placing, insertion: number): Curve[] {
  const placed = placeLoops(part.section, placing);
  return curvesBetween(placed, placing.x, placing.x + placing.scale * insertion);
}

/** Top and bottom of the panel's wood, wood mm, at `x` in from its edge, looked at from just on the side of the edge. */
export function surfacesAt(part: PanelPart, x: number): { top: number; bottom: number } | null {
  return spanAt(part.section, Math.max(x - NEAR, NEAR));
}

/** Whether a point of the section, wood mm, still lies on the outline of what is left. */
export function liesOnOutline({ section }: PanelPart, x: number, y: number): boolean {
  const near = { x0: x - NEAR_OUTLINE, y0: y - NEAR_OUTLINE, x1: x + NEAR_OUTLINE, y1: y + NEAR_OUTLINE };
  return section.some(({ curves }) => curves.some((curve) => curveMeetsBox(curve, near)));
}

/** A point this near to a line, mm, lies on it. */
const NEAR_OUTLINE = 1e-3;
