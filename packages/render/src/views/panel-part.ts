import type { Curve, Report } from '@fielded/core';
import { curvesBetween, joinCurves, spanAt } from '../geometry/clip.ts';
import { line } from '../geometry/curves.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import type { Loop, Placing } from '../geometry/path.ts';
import { parsePath, placeLoops, polygon } from '../geometry/path.ts';
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
  const shown = Math.min(width, Math.max(reach + FIELD_SHOWN / placing.scale, 1));
  const section = parsePath(outline).map((loop) => shorten(loop, width, shown));
  const woods = placeLoops(section, placing);
  const right = placing.x + placing.scale * shown;
  const atBreak = (curve: Curve) => Math.abs(curve.x0 - right) < NEAR && Math.abs(curve.x1 - right) < NEAR;
  const edges = woods.flatMap((loop) => startAfter(loop.curves, atBreak));
  const breaks = woods.flatMap((loop) => loop.curves.filter(atBreak)).map((c) => breakLine(right, c.y0, c.y1));
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

/** Moves the far end of the section, where it is only field, from `width` to `shown`. */
function shorten(loop: Loop, width: number, shown: number): Loop {
  const nearer = (x: number) => (x > width - NEAR ? shown : x);
  return { ...loop, curves: loop.curves.map((curve) => ({ ...curve, x0: nearer(curve.x0), x1: nearer(curve.x1) })) };
}

/** The curves of a loop without those left out, started so that what remains hangs together. */
function startAfter(curves: readonly Curve[], leftOut: (curve: Curve) => boolean): Curve[] {
  const first = curves.findIndex(leftOut);
  const turned = first < 0 ? curves : [...curves.slice(first), ...curves.slice(0, first)];
  return turned.filter((curve) => !leftOut(curve));
}

/** A plumb break line with a zigzag in its middle, run on 2 mm past the part at both ends (ISO 128). */
export function breakLine(x: number, y0: number, y1: number): Loop {
  const top = Math.min(y0, y1) - 2;
  const bottom = Math.max(y0, y1) + 2;
  const middle = (top + bottom) / 2;
  return polygon(
    [
      [x, top],
      [x, middle - 2],
      [x - 1.5, middle - 0.7],
      [x + 1.5, middle + 0.7],
      [x, middle + 2],
      [x, bottom],
    ],
    false,
  );
}

/** The wood that the cuts take, as a pale ground with the stock's old edge dashed; it lies under the panel. */
export function drawRemoved(report: Report, placing: Placing, right: number): { items: Item[]; outlines: Curve[] } {
  const { scale, x, y } = placing;
  const bottom = y + scale * report.section.thickness;
  const reachOf = (side: 'front' | 'back') =>
    Math.max(0, ...report.section.cuts.filter((cut) => cut.side === side).map((cut) => cut.reach));
  const old: Curve[] = [line(x, bottom, x, y)];
  if (reachOf('front') > 0) old.push(line(x, y, x + scale * reachOf('front'), y));
  if (reachOf('back') > 0) old.unshift(line(x + scale * reachOf('back'), bottom, x, bottom));
  const stock = polygon([
    [x, y],
    [right, y],
    [right, bottom],
    [x, bottom],
  ]);
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
