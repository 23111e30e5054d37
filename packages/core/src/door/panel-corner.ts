import {
  type Chain,
  type Curve,
  cornerAngle,
  crossingsAt,
  distanceTo,
  line,
  pointAt,
  shiftCurve,
} from '@fielded/geometry';
import { shapedCurve } from './shaped-head.ts';
import { LEAST_CORNER } from './shaped-head-outline.ts';
import { type ShapedPanel, shapedOutline } from './shaped-panel.ts';

/** The corner of a panel that goes furthest into the frame beside a shaped head, mm. */
export interface PanelCorner {
  /** Into the top rail's own edge, or beside the rail's end, in the groove of a stile. */
  readonly into: 'rail' | 'stile';
  /** From the rail's edge, in any direction: a groove that is this deep all round the corner lets it in. */
  readonly reach: number;
}

/** A corner that stands out by less, mm, is none to a groove or a chisel. */
const STANDS_OUT = 0.05;

/**
 * The corner of a panel that goes further into the frame beside its shaped head than its edge does (formula A11); null where none does.
 *
 * A cutter that goes round a corner of the rail leaves a groove as deep as everywhere, measured from the corner, and no deeper.
 * Two straight sides that meet at the angle 2α put the panel's corner at i / sin α from the rail's. Beside the rail's end, which
 * lies `joint` mm in the stile's groove (0: it does not), a shaped head that rises to the stile at the slope ψ puts it at i(1 + sin ψ)/cos ψ.
 *
 * @example a shaped head of two lines that meet at 90°, i = 9: { into: 'rail', reach: 12.73 }
 */
export function panelCorner(panel: ShapedPanel, joint: number): PanelCorner | null {
  const { opening, insertion } = panel;
  const rail = railEdge(panel, joint);
  const edge = shapedOutline(panel, 0);
  const most = opening / 2 + joint;
  // In the stile's groove past the rail's end there is room up to the door's edge.
  const ends = joint > 0 ? [...placesAt(edge, -most), ...placesAt(edge, most)] : [];
  let furthest: PanelCorner | null = null;
  for (const { x, y } of [...cornersOf(edge), ...ends]) {
    if (Math.abs(x) > most + 1e-9 || y < panel.height / 1e6) continue;
    const reach = Math.min(...rail.map((c) => distanceTo(c, x, y)));
    if (reach < insertion + STANDS_OUT || reach <= (furthest?.reach ?? 0)) continue;
    furthest = { into: Math.abs(x) > opening / 2 + 1e-9 ? 'stile' : 'rail', reach };
  }
  return furthest;
}

/** The lower edge of the top rail from end to end, over the panel as its outline lies: level in the joints, the sight edge between. */
function railEdge({ shaped, opening, height, insertion }: ShapedPanel, joint: number): Chain {
  const half = opening / 2;
  const springing = height - insertion - shaped.rise;
  const sight = shapedCurve(shaped, opening, 0, half).map((c) => shiftCurve(c, 0, springing));
  const [left, right] = [sight[0]!.y0, sight[sight.length - 1]!.y1];
  if (joint <= 0) return sight;
  return [line(-half - joint, left, -half, left), ...sight, line(half, right, half + joint, right)];
}

/** Where neighbours of a ring meet at an angle. */
function cornersOf(ring: Chain): { readonly x: number; readonly y: number }[] {
  return ring.flatMap((c, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    return cornerAngle(before, c) > LEAST_CORNER ? [{ x: c.x0, y: c.y0 }] : [];
  });
}

/** The highest place of a ring over or under `x`; none beside it. */
function placesAt(ring: Chain, x: number): { readonly x: number; readonly y: number }[] {
  const heights = ring.flatMap((c: Curve) => crossingsAt(c, x).map((at) => pointAt(c, at).y));
  return heights.length === 0 ? [] : [{ x, y: Math.max(...heights) }];
}
