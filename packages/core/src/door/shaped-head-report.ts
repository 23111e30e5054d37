import { type Chain, pathData, shiftCurve } from '@fielded/geometry';
import { toDegrees } from '../measure/angle.ts';
import type { Machine } from '../shop/shop.ts';
import type { Door, Insertion, Opening } from './door.ts';
import { chooseGuide, type MachineGuide } from './guide.ts';
import { areaWithin, outlineLength } from './outline-measures.ts';
import { type PanelCorner, panelCorner } from './panel-corner.ts';
import {
  archRadius,
  cathedralHalfWidth,
  type EdgeRadii,
  edgeRadii,
  greatestLean,
  hollowOf,
  railHollow,
  type ShapedHead,
  shapedCurve,
  squareGap,
} from './shaped-head.ts';
import { hasOutline, type ShapedPanel, shapedOutline } from './shaped-panel.ts';

/** A cut that goes round a shaped head: how far in it reaches, and the cutting radius of its cutter, mm; null where none is named. */
export interface CutRoundHead {
  readonly name: string;
  readonly side: 'front' | 'back';
  readonly run: 'under' | 'over';
  readonly reach: number;
  readonly cuttingRadius: number | null;
}

/** A side of a shaped head, seen from the door's front. */
export type Shoulder = 'left' | 'right';

/**
 * The shoulder of a shaped head that is cut against the grain, seen from the front (formula A9).
 *
 * Fed against the rotation, the cutter travels over the shaped head from one side to the other. Going up to the apex it leaves the wider
 * wood for the narrower, and splits run out into the waste; going down they run into the panel. Counterclockwise from above, feed
 * is right to left, so the cutter travels left to right as the panel is seen from above: its front where the worked face is not
 * on the table.
 *
 * @example tornShoulder({ side: 'front', run: 'under' }, 'counterclockwise') // 'left'
 */
export function tornShoulder(
  { side, run }: Pick<CutRoundHead, 'side' | 'run'>,
  rotation: 'clockwise' | 'counterclockwise',
): Shoulder {
  const frontUp = (side === 'front') === (run === 'over');
  return frontUp === (rotation === 'counterclockwise') ? 'right' : 'left';
}

/** A shaped head and what follows for the panel under it. Lengths mm, angles degrees. */
export interface HeadReport {
  readonly shape: ShapedHead['shape'];
  readonly rise: number;
  /** Of the rail's sight edge: an arch's radius, a cathedral's two and half the width of its curved part. */
  readonly radius?: number;
  readonly crown?: number;
  readonly ears?: number;
  readonly halfWidth?: number;
  readonly panelEdge: EdgeRadii;
  /** The field's edge; null where the raise leaves no field. */
  readonly field: EdgeRadii | null;
  /** Radius of the bearing that runs on the panel's edge, R − ρ: the largest of all cuts; null where no cut names a cutter head. */
  readonly bearing: number | null;
  /** The diameter of each cut's own bearing, 2(R − ρ), for the cuts that name a cutter head. */
  readonly bearings: readonly { readonly cut: string; readonly diameter: number }[];
  /** The least hollow radius of the rail's sight edge whose panel that bearing still follows, R − ρ + i. */
  readonly leastConcave: number | null;
  /** Diameter of the largest groove cutter that follows the rail where it is hollow, 2(r + groove depth); 0 in a corner, null where nothing is hollow. */
  readonly greatestGroover: number | null;
  /** The panel's corner that goes furthest into the frame beside the shaped head; left out where none goes further in than its edge. */
  readonly corner?: PanelCorner;
  /** How far its edge leans at most: from the grain to its normal. */
  readonly lean: number;
  /** The gap square to the edge where it leans most that gives the panel its gaps across and along the grain. */
  readonly gap: number;
  /** For each cut, the shoulder that is cut against the grain by a spindle that turns counterclockwise, seen from the front. */
  readonly tears: readonly { readonly cut: string; readonly shoulder: Shoulder }[];
  /** What the curve can be run on: for each cut that names a cutter head, each machine that lists bearings or ring fences. */
  readonly guides: readonly MachineGuide[];
  /** Area of the panel's front, mm², and length of its edge. */
  readonly area: number;
  readonly length: number;
  /** SVG path data with true arcs: x from the panel's left edge, y down from its top. */
  readonly paths: { readonly sight: string; readonly panelEdge: string; readonly field: string | null };
}

/** The panel under a door's shaped head: that of its top opening. */
export function shapedPanel(shaped: ShapedHead, opening: Opening, insertion: Insertion): ShapedPanel {
  return {
    shaped,
    opening: opening.width,
    width: opening.width + 2 * insertion.across,
    height: opening.height + 2 * insertion.up,
    insertion: insertion.up,
  };
}

/** The radii of the sight edge by the names they have. */
function ownRadii(shaped: ShapedHead, opening: number): Pick<HeadReport, 'radius' | 'crown' | 'ears' | 'halfWidth'> {
  if (shaped.shape === 'outline') return {};
  if (shaped.shape === 'arch') return { radius: archRadius(opening, shaped.rise) };
  return { crown: shaped.crown, ears: shaped.ears, halfWidth: cathedralHalfWidth(shaped) };
}

/** Every cut on every machine whose bearings or ring fences are known. */
function listGuides(
  cuts: readonly CutRoundHead[],
  hollow: number | null,
  machines: Readonly<Record<string, Machine>>,
): MachineGuide[] {
  return Object.entries(machines).flatMap(([machine, each]) => {
    if (each.bearings === undefined && each.ringFences === undefined) return [];
    return cuts.flatMap(({ name: cut, cuttingRadius, reach }) =>
      cuttingRadius === null ? [] : [{ cut, machine, ...chooseGuide({ cuttingRadius, reach }, hollow, each) }],
    );
  });
}

/** The groove cutter's bearing, R less the groove's depth, has to go into the rail's hollow (formula A10). */
function groover(hollow: number | null, depth: number): number | null {
  return hollow === null || hollow === 0 ? hollow : 2 * (hollow + depth);
}

/** What a door's shaped head gives; `field` is how far in from the panel's edge its field begins, mm, 0 for none, and `joint` how far the top rail's ends lie in the stiles' grooves, mm, 0 with a mitre. */
export function reportShapedHead(
  door: Door & { readonly head: ShapedHead },
  panel: ShapedPanel,
  cuts: readonly CutRoundHead[],
  field: number,
  gaps: { readonly across: number; readonly along: number },
  joint: number,
  machines: Readonly<Record<string, Machine>>,
): HeadReport {
  const { head: shaped } = door;
  const { insertion } = panel;
  // What guides the cuts: each cutter's bearing, and the largest of them.
  const bearings = cuts.flatMap(({ name, cuttingRadius, reach }) =>
    cuttingRadius === null ? [] : [{ cut: name, diameter: 2 * (cuttingRadius - reach) }],
  );
  const bearing = bearings.length === 0 ? null : Math.max(...bearings.map(({ diameter }) => diameter)) / 2;
  // The outlines: sight edge, panel's edge, and the field where the raise leaves one.
  const lean = greatestLean(shaped, panel.opening);
  const panelEdge = edgeRadii(shaped, panel.opening, insertion);
  const edge = shapedOutline(panel, 0);
  const isField = field > 0 && hasOutline(panel, field);
  const corner = panelCorner(panel, joint);
  // Paths start at the panel's left edge and run down from its top.
  const path = (chain: Chain, closed: boolean) =>
    pathData(
      chain.map((c) => shiftCurve(c, panel.width / 2, 0)),
      panel.height,
      closed,
    );
  const sight = shapedCurve(shaped, panel.opening, 0, panel.opening / 2).map((c) =>
    shiftCurve(c, 0, panel.height - insertion - shaped.rise),
  );
  return {
    shape: shaped.shape,
    rise: shaped.rise,
    ...ownRadii(shaped, panel.opening),
    panelEdge,
    field: isField ? edgeRadii(shaped, panel.opening, insertion - field) : null,
    bearing,
    bearings,
    leastConcave: bearing === null ? null : bearing + insertion,
    greatestGroover: groover(railHollow(shaped, panel.opening), insertion + gaps.along),
    ...(corner && { corner }),
    lean: toDegrees(lean),
    gap: squareGap(gaps.across, gaps.along, lean),
    tears: cuts.map((cut) => ({ cut: cut.name, shoulder: tornShoulder(cut, 'counterclockwise') })),
    guides: listGuides(cuts, hollowOf(panelEdge), machines),
    area: areaWithin(edge),
    length: outlineLength(edge),
    paths: {
      sight: path(sight, false),
      panelEdge: path(edge, true),
      field: isField ? path(shapedOutline(panel, field), true) : null,
    },
  };
}
