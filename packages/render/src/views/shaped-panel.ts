import type { DoorReport, HeadReport, Report } from '@fielded/core';
import { type Box, type Curve, type Loop, line, loopsBox, placeLoops, polygon, readLoops } from '@fielded/geometry';
import type { LeaderDimension } from '../dimension/leader.ts';
import { radiusDimension } from '../dimension/radius.ts';
import type { InBothUnits } from '../words/units-choice.ts';
import { viewFigure } from './view-figure.ts';

/** The outlines of a panel under a shaped head, on the paper. */
export interface ShapedLoops {
  readonly edge: Loop;
  /** The frame's sight edge. */
  readonly sight: Loop;
  readonly field: Loop | null;
  /** Lines from the corners of the panel's edge to those of its field. */
  readonly corners: readonly Loop[];
  /** The square part of the field, under the head. */
  readonly square: Box;
}

/** The outlines of a panel whose top left corner lies at (x, y), paper mm, at a scale. */
export function shapedLoops(
  door: DoorReport & { readonly head: HeadReport },
  scale: number,
  x: number,
  y: number,
): ShapedLoops {
  const { head, panel, opening } = door;
  const place = (loops: readonly Loop[]) => placeLoops(loops, { scale, x, y });
  const [edge] = place(readLoops(head.paths.panelEdge));
  const [field] = head.paths.field === null ? [] : place(readLoops(head.paths.field));
  const [open] = readLoops(head.paths.sight);
  const bottom = panel.height - (panel.height - opening.height) / 2;
  const [sight] = place([closeBelow(open!.curves, bottom)]);
  const inner = field ?? sight!;
  return {
    edge: edge!,
    sight: sight!,
    field: field ?? null,
    corners: field === undefined ? [] : cornersBetween(edge!, field),
    square: squarePart(inner),
  };
}

/** A head's sight edge with the sides and the foot of its opening. */
function closeBelow(curves: readonly Curve[], bottom: number): Loop {
  const [first, last] = [curves[0]!, curves[curves.length - 1]!];
  return {
    closed: true,
    curves: [
      ...curves,
      line(last.x1, last.y1, last.x1, bottom),
      line(last.x1, bottom, first.x0, bottom),
      line(first.x0, bottom, first.x0, first.y0),
    ],
  };
}

/** Both outlines run foot, right side, head, left side: their four corners belong together. */
function cornersBetween(outer: Loop, inner: Loop): Loop[] {
  const corners = ({ curves }: Loop) => {
    const [foot, right, left] = [curves[0]!, curves[1]!, curves[curves.length - 1]!];
    return [
      [foot.x0, foot.y0],
      [foot.x1, foot.y1],
      [right.x1, right.y1],
      [left.x0, left.y0],
    ] as const;
  };
  const to = corners(inner);
  return corners(outer).map((from, i) => polygon([from, to[i]!], false));
}

/** Where grain can be drawn without crossing the head: from the lower end of its sides. */
function squarePart(loop: Loop): Box {
  const box = loopsBox([loop])!;
  const sides = loop.curves.filter((c) => c.turn === 0 && Math.abs(c.x1 - c.x0) < 1e-9 && Math.abs(c.y1 - c.y0) > 1e-9);
  const top = Math.max(...sides.map((c) => Math.min(c.y0, c.y1)));
  return { ...box, y0: top };
}

/** The field's edge and the lines to it from the panel's corners. */
export function fieldLoops(shaped: ShapedLoops | null, square: readonly Loop[]): readonly Loop[] {
  if (shaped === null) return square;
  return shaped.field === null ? [] : [shaped.field, ...shaped.corners];
}

/** The radii of a head's sight edge or of its panel's edge, each at the middle of one of its arcs. */
export function radiusLeaders(
  report: Report & InBothUnits,
  index: number,
  of: 'sight' | 'panelEdge',
  loop: Loop,
): LeaderDimension[] {
  const { head, name } = report.doors![index]!;
  if (head === undefined) return [];
  const arcs = loop.curves.filter(({ turn }) => turn !== 0);
  const radii = of === 'sight' ? head : head.panelEdge;
  const path = of === 'sight' ? `doors[${index}].head` : `doors[${index}].head.panelEdge`;
  const say = (key: 'radius' | 'crown' | 'ears', value: number, arc: Curve | undefined): LeaderDimension[] => {
    if (arc === undefined) return [];
    const radius = viewFigure(report, `${path}.${key}`, value, 'headRadius', { door: name });
    return [radiusDimension({ ...radius, text: `R ${radius.text}` }, arc)];
  };
  // Of the two ears, the right one.
  const rightmost = [...arcs].sort((p, q) => q.cx - p.cx)[0];
  const middle = arcs[Math.floor(arcs.length / 2)];
  if ('radius' in radii && radii.radius !== undefined) return say('radius', radii.radius, middle);
  if ('crown' in radii && radii.crown !== undefined && radii.ears !== undefined)
    return [...say('crown', radii.crown, middle), ...say('ears', radii.ears, rightmost)];
  return [];
}
