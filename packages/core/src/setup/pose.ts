import { pointAt } from '@fielded/geometry';
import type { Run } from './set-up-report.ts';
import type { Work } from './work.ts';

/** Where a head stands. Lengths mm: heights from the table, along the spindle; distances from the fence's line along the table. */
export interface HeadPose {
  readonly cuttingPoint: number;
  /** null where the knife's place in its head is not known. */
  readonly seat: number | null;
  readonly toAxis: number;
  readonly standsOut: number;
  /** What the turning knives need of the fence, without clearance. */
  readonly gap: number;
}

/**
 * Places the head for a cut (formulas U2 and U4): under the stock the deepest station stands D above the table, over it T − D;
 * the fence's line passes R − ρ from the axis, and the circle takes 2√(ρ(2R − ρ)) of it. On edge the fence sets the depth
 * and the spindle the reach, so that D and ρ change places. Tilted spindles: formula U13.
 */
export function poseHead(work: Work, run: Run): HeadPose {
  const { cut, head, thickness } = work;
  const radius = head.cuttingDiameter / 2;
  if (cut.tilt === 0) {
    const cuttingPoint = run === 'under' ? cut.depth : thickness - cut.depth;
    return { cuttingPoint, seat: seatAt(work, run, cuttingPoint), ...fenceAt(radius, cut.reach) };
  }
  if (cut.tilt === Math.PI / 2) {
    return { cuttingPoint: cut.reach, seat: seatAt(work, 'under', cut.reach), ...fenceAt(radius, cut.depth) };
  }
  return poseTilted(work, run);
}

/** Lower face of the head: the deepest station lies `fromFace` in from its upper face under the stock, from its lower face over it. */
function seatAt({ knife, head }: Pick<Work, 'knife' | 'head'>, run: Run, station: number): number | null {
  if (knife?.fromFace === undefined) return null;
  return run === 'under' ? station + knife.fromFace - head.height : station - knife.fromFace;
}

function fenceAt(radius: number, out: number): Pick<HeadPose, 'toAxis' | 'standsOut' | 'gap'> {
  return { toAxis: radius - out, standsOut: out, gap: chordAt(radius, radius - out) };
}

/** Length that a circle takes of a line at some distance from its centre, mm; 0 where they do not meet. */
function chordAt(radius: number, distance: number): number {
  return 2 * Math.sqrt(Math.max(0, (radius - distance) * (radius + distance)));
}

/** Points taken of each line or arc of a cut to find where a tilted head stands out most. */
const POINTS = 16;

/**
 * A spindle tilted by θ, its top leaning away from stock that is run under the stock's face and towards stock run over. With
 * u along the spindle and ν square to it towards the stock, a point a in and b deep lies at u = b·cos θ − a·sin θ under,
 * (T − b)·cos θ + a·sin θ over, and ν = a·cos θ + b·sin θ (over: less T·sin θ). The knives' longest point has the greatest ν.
 */
function poseTilted({ cut, head, knife, thickness, sweep }: Work, run: Run): HeadPose {
  const [sin, cos] = [Math.sin(cut.tilt), Math.cos(cut.tilt)];
  const under = run === 'under';
  const place = ({ x, y }: { x: number; y: number }) => ({
    u: under ? y * cos - x * sin : (thickness - y) * cos + x * sin,
    v: x * cos + y * sin - (under ? 0 : thickness * sin),
  });
  const points = sweep.swept
    .flatMap((curve) => Array.from({ length: POINTS + 1 }, (_, i) => pointAt(curve, i / POINTS)))
    .filter(({ x, y }) => x >= 0 && y >= 0)
    // Where the cut leaves the face there is always wood, however rounding falls.
    .concat({ x: cut.reach, y: 0 })
    .map(place);
  const radius = head.cuttingDiameter / 2;
  const longest = Math.max(...points.map(({ v }) => v));
  const axis = longest - radius;
  // Where the spindle's axis passes through the table.
  const atTable = (under ? -axis : axis) * (sin / cos);
  const station = place({ x: 0, y: cut.depth }).u;
  const seat = seatAt({ knife, head }, run, station);
  const gaps = points.map(({ u, v }) => {
    const x = axis * cos + (under ? -u : u) * sin;
    return chordAt(radius - longest + v, Math.abs(x) / cos);
  });
  return {
    cuttingPoint: under ? cut.depth : thickness - cut.depth,
    seat: seat === null ? null : seat - atTable,
    toAxis: -axis / cos,
    standsOut: cut.reach,
    gap: Math.max(...gaps),
  };
}
