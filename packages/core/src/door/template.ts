import { type Chain, flipCurve, line, readReportPath, shiftCurve } from '@fielded/geometry';
import type { DoorReport } from './door-report.ts';
import { type ShapedHead, shapedCurve } from './shaped-head.ts';
import type { HeadReport } from './shaped-head-report.ts';
import { type ShapedPanel, shapedOutline } from './shaped-panel.ts';

export type TemplatePart = 'rail' | 'panel' | 'field';

/** The panel under a reported door's shaped head; null for a door without one. */
function shapedPanelOf({ head, opening, panel }: DoorReport): ShapedPanel | null {
  if (head === undefined) return null;
  const insertion = (panel.height - opening.height) / 2;
  const across = (panel.width - opening.width) / 2;
  return {
    shaped: shapedOf(head, across, insertion),
    opening: opening.width,
    width: panel.width,
    height: panel.height,
    insertion,
  };
}

/** A shaped head as it was given, from its report: an outline is read back from its sight edge. */
function shapedOf(head: HeadReport, across: number, insertion: number): ShapedHead {
  const { shape, rise, crown, ears } = head;
  if (shape === 'cathedral') return { shape, rise, crown: crown!, ears: ears! };
  if (shape !== 'outline') return { shape: 'arch', rise };
  const [sight] = readReportPath(head.paths.sight);
  return { shape, rise, chain: sight!.map((c) => shiftCurve(flipCurve(c, insertion + rise), -across, 0)) };
}

/**
 * The outline of a part of a shaped door at full size, closed, anticlockwise with y up: exact lines and arcs, mm.
 *
 * `rail`: the top rail as sawn from its stock, joints and all, its left end at x 0 and the springing at y 0. `panel` and
 * `field`: x from the panel's left edge, y from its bottom; the field begins `field` mm within the edge, and the panel's outline is
 * moved out by `outside`, for a bearing that is smaller than the one that belongs to the cut.
 *
 * @throws RangeError for a door without a shaped head, and where the outline has no head or no sides left.
 */
export function templateOutline(door: DoorReport, part: TemplatePart, field: number, outside = 0): Chain {
  const panel = shapedPanelOf(door);
  if (panel === null) throw new RangeError(`door ${door.name} has no shaped head`);
  if (part === 'rail') return railOutline(door, panel);
  const inside = part === 'field' ? field : -outside;
  return shapedOutline(panel, inside).map((c) => shiftCurve(c, panel.width / 2, 0));
}

function railOutline({ parts, topRail }: DoorReport, { shaped, opening }: ShapedPanel): Chain {
  const rail = parts.find(({ part }) => part === 'top rail')!;
  const joint = (rail.length - opening) / 2;
  const top = topRail + shaped.rise;
  const sight = shapedCurve(shaped, opening, 0, opening / 2).map((c) => shiftCurve(c, rail.length / 2, 0));
  // An outline of any shape may end above its springing, and higher on one side than on the other.
  const [left, right] = [sight[0]!.y0, sight[sight.length - 1]!.y1];
  return [
    line(0, left, joint, left),
    ...sight,
    line(joint + opening, right, rail.length, right),
    line(rail.length, right, rail.length, top),
    line(rail.length, top, 0, top),
    line(0, top, 0, left),
  ].filter(({ x0, y0, x1, y1 }) => x0 !== x1 || y0 !== y1);
}
