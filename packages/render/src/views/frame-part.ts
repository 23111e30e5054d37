import type { Report } from '@fielded/core';
import { type Curve, joinCurves, type Loop, line, placeLoops, readLoops, reverseCurves } from '@fielded/geometry';
import { breakLine } from '../geometry/break-line.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import type { Item } from '../scene.ts';
import { path } from '../scene.ts';

/** The frame's edge as drawn: paper mm, the groove opening to the right at `sight`. */
export interface FramePart {
  readonly items: readonly Item[];
  readonly outlines: readonly Curve[];
  readonly woods: readonly Loop[];
  readonly left: number;
  readonly grooveBottom: number;
  readonly grooveTop: number;
  readonly grooveFloor: number;
}

export const FRAME_HATCH = 2.4;
/** Wood shown behind the groove, paper mm. */
const BEHIND_GROOVE = 18;

/**
 * The frame's section with its groove and what is worked on its arrises, broken off behind the groove. `sight` is the x of its edge,
 * `front` the y of its front face. `plainBack` leaves the back's arris square, as it is where a rail meets a stile.
 */
export function drawFramePart(
  report: Report,
  scale: number,
  sight: number,
  front: number,
  plainBack = false,
): FramePart {
  const { groove, thickness, sticking, backEdge } = report.frame;
  const grooveBottom = sight - scale * groove.depth;
  const left = grooveBottom - BEHIND_GROOVE;
  const grooveTop = front + scale * groove.setback;
  const grooveFloor = grooveTop + scale * groove.width;
  const back = front + scale * thickness;

  const arris = sticking ? placeArris(sticking, scale, sight, front) : [];
  const behind = backEdge && !plainBack ? reverseCurves(placeArris(backEdge.outline, scale, sight, front)) : [];
  const lipStart = arris[0] ? { x: arris[0].x0, y: arris[0].y0 } : { x: sight, y: front };
  const lipEnd = arris.length ? { x: arris[arris.length - 1]!.x1, y: arris[arris.length - 1]!.y1 } : lipStart;
  const edge: Curve[] = [
    line(left, front, lipStart.x, lipStart.y),
    ...arris,
    line(lipEnd.x, lipEnd.y, sight, grooveTop),
    line(sight, grooveTop, grooveBottom, grooveTop),
    line(grooveBottom, grooveTop, grooveBottom, grooveFloor),
    line(grooveBottom, grooveFloor, sight, grooveFloor),
    line(sight, grooveFloor, sight, behind[0]?.y0 ?? back),
    ...behind,
    line(behind.at(-1)?.x1 ?? sight, back, left, back),
  ].filter((curve) => curve.x0 !== curve.x1 || curve.y0 !== curve.y1);
  const wood: Loop = { curves: [...edge, line(left, back, left, front)], closed: true };
  const broken = breakLine(left, front, back);
  return {
    items: [
      path('wood', 'wood', [wood]),
      path('hatch', 'hatch-frame', joinCurves(hatchLoops([wood], FRAME_HATCH, false))),
      path('break', 'break', [broken]),
      path('outline', 'outline', joinCurves(edge)),
    ],
    outlines: [...edge, ...broken.curves],
    woods: [wood],
    left,
    grooveBottom,
    grooveTop,
    grooveFloor,
  };
}

/** The profile of an arris from its face to the sight edge. It is given from the sight edge in, so it is mirrored, and run from its shallow end. */
function placeArris(outline: string, scale: number, sight: number, front: number): readonly Curve[] {
  const [loop] = placeLoops(readLoops(outline), { scale, x: sight, y: front, mirrored: true });
  const curves = loop?.curves ?? [];
  const first = curves[0];
  const last = curves[curves.length - 1];
  if (!first || !last) return [];
  return first.x0 > last.x1 ? reverseCurves(curves) : curves;
}
