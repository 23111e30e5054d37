import type { CutReport, Report } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import {
  type Curve,
  curveMeetsBox,
  type Loop,
  poseDirection,
  poseLoops,
  posePoint,
  readLoops,
} from '@fielded/geometry';
import type { AngleDimension } from '../dimension/angle.ts';
import type { LeaderDimension } from '../dimension/leader.ts';
import type { LinearDimension, Side } from '../dimension/linear.ts';
import type { OrdinateDimension } from '../dimension/ordinate.ts';
import { radiusDimension } from '../dimension/radius.ts';
import { safeText } from '../text/safe-text.ts';
import { spokenAngle } from '../words/lengths.ts';
import { choosePoints } from './chosen-points.ts';
import { depthFigure, fullDepthEnd, landFigure, reachFigure, shoulderFigure } from './cut-dimensions.ts';
import type { CutPose } from './cut-pose.ts';
import { viewFigure } from './view-figure.ts';

/** The sizes that a profile is set out by. */
export interface ProfileDimensions {
  readonly tiers: LinearDimension[];
  readonly leaders: LeaderDimension[];
  readonly angles: AngleDimension[];
  readonly ordinates: OrdinateDimension[];
}

/** The sizes of one cut's profile, from which a knife could be set out: those that define its shape, with radii or slope; a free outline's by ordinates. */
export function dimensionProfile(report: Report, index: number, pose: CutPose): ProfileDimensions {
  const cut = report.section.cuts[index]!;
  const { thickness } = report.section;
  const front = cut.side === 'front';
  /** Cut coordinates, in from the edge and below the worked face, to the paper. */
  const at = (a: number, b: number) => posePoint(pose.pose, a, front ? b : thickness - b);
  const direction = (degrees: number) => poseDirection(pose.pose, ((front ? degrees : -degrees) * Math.PI) / 180);
  const floorEnd = fullDepthEnd(cut, thickness);
  const tiers: LinearDimension[] = [
    { ...depthFigure(report, index), side: pose.depthSide, from: at(0, 0), to: at(0, cut.depthCut) },
    { ...reachFigure(report, index), side: pose.reachSide, from: at(0, 0), to: at(cut.reach, 0) },
  ];
  if (cut.land > 0)
    tiers.push({ ...landFigure(report, index), side: pose.reachSide, from: at(0, 0), to: at(cut.land, 0) });
  const leaders: LeaderDimension[] = [];
  if (cut.shoulder > 0 && stepIsCut(cut, thickness)) {
    const directions = [-150, -120, -105, -75, -60, -30, -165, -15].map(direction);
    leaders.push({
      ...shoulderFigure(report, index),
      targets: [{ ...at(cut.reach, cut.shoulder / 2), directions }],
      arrow: true,
    });
  }
  const drawn = readLoops(cut.drawn);
  leaders.push(...radii(report, cut, index, poseLoops(pose.pose, drawn), pose));
  const angles = cut.shape === 'bevel' ? slope(report, cut, index, floorEnd, at) : [];
  const ordinates = cut.shape === 'outline' ? outlineOrdinates(report, cut, index, drawn, at, pose) : [];
  return { tiers, leaders, angles, ordinates };
}

/** More figures than these stand farther off the drawing than it is long, and nobody sets a knife out by them. */
const MOST_CORNERS = 12;
const MOST_ARCS = 10;

/** Whether the upright step at the field is one that the turning knife leaves. */
function stepIsCut(cut: CutReport, thickness: number): boolean {
  const level = cut.side === 'front' ? cut.shoulder / 2 : thickness - cut.shoulder / 2;
  const near = { x0: cut.reach - 1e-3, x1: cut.reach + 1e-3, y0: level - 1e-3, y1: level + 1e-3 };
  return readLoops(cut.swept).some(({ curves }) => curves.some((curve) => curveMeetsBox(curve, near)));
}

function radii(
  report: Report,
  cut: CutReport,
  index: number,
  placed: readonly Loop[],
  { pose }: CutPose,
): LeaderDimension[] {
  const across = pose.xx || pose.xy;
  const swept = poseLoops(pose, readLoops(cut.swept)).flatMap(({ curves }) => curves);
  // Where the sweep takes wood that the drawing keeps, the drawn profile stands there too.
  const isSeen = ({ x, y }: Point) => {
    const near = { x0: x - 0.1, x1: x + 0.1, y0: y - 0.1, y1: y + 0.1 };
    return cut.takenFromDrawing > 0.005 || swept.some((curve) => curveMeetsBox(curve, near));
  };
  const arcs = placed.flatMap(({ curves }) => curves.filter((curve: Curve) => curve.turn !== 0));
  // Of very many arcs, those that reach farthest.
  const extents = arcs.map(({ x0, y0, x1, y1 }) => Math.hypot(x1 - x0, y1 - y0)).sort((a, b) => b - a);
  const least = extents[MOST_ARCS] ?? 0;
  const of = `section.cuts[${index}].drawn`;
  // Arcs of one radius share a figure, which says how many they are.
  const alike = new Map<string, LeaderDimension[]>();
  for (const arc of arcs) {
    if (Math.hypot(arc.x1 - arc.x0, arc.y1 - arc.y0) <= least) continue;
    // What the scale leaves in the last digits does not decide how a half is rounded.
    const r = Number((arc.r / Math.abs(across)).toPrecision(12));
    const shown = viewFigure(report, of, r, 'radius', { cut: safeText(cut.name) });
    const radius = radiusDimension(shown, arc);
    const targets = radius.targets.filter(isSeen);
    if (targets.length > 0) alike.set(shown.text, [...(alike.get(shown.text) ?? []), { ...radius, targets }]);
  }
  return [...alike.values()].map((same, i) => ({
    ...same[0]!,
    key: `section.cuts[${index}].radius ${i}`,
    text: `${same.length > 1 ? `${same.length}× ` : ''}R ${same[0]!.text}`,
    targets: same.flatMap(({ targets }) => targets),
  }));
}

/** The slope of a bevel to the worked face. */
function slope(
  report: Report,
  cut: CutReport,
  index: number,
  floorEnd: number,
  at: (a: number, b: number) => { x: number; y: number },
): AngleDimension[] {
  const run = cut.reach - floorEnd;
  const rise = cut.depthCut - cut.shoulder;
  if (!(run > 0 && rise > 0)) return [];
  const degrees = (Math.atan2(rise, run) * 180) / Math.PI;
  const vertex = at(cut.reach, cut.shoulder);
  const level = at(cut.reach - 1, cut.shoulder);
  const down = at(floorEnd, cut.depthCut);
  const from = Math.atan2(level.y - vertex.y, level.x - vertex.x);
  let sweep = Math.atan2(down.y - vertex.y, down.x - vertex.x) - from;
  if (sweep > Math.PI) sweep -= 2 * Math.PI;
  if (sweep < -Math.PI) sweep += 2 * Math.PI;
  const length = Math.hypot(down.x - vertex.x, down.y - vertex.y);
  const shown = viewFigure(report, `section.cuts[${index}].drawn`, degrees, 'slope', {
    cut: safeText(cut.name),
    slope: degrees,
  });
  return [
    {
      ...shown,
      key: `section.cuts[${index}].slope`,
      text: spokenAngle(degrees, report),
      under: '',
      vertex,
      from,
      sweep,
      radii: [0.55, 0.7, 0.4, 0.85, 1.1].map((share) => share * length),
    },
  ];
}

/** The corners by which a free outline is set out, at most `MOST_CORNERS`, and how many it has. */
export function outlineCorners(drawn: readonly Loop[]): { readonly given: readonly Point[]; readonly all: number } {
  const corners = drawn.flatMap(({ curves }) => curves.map(({ x0, y0 }) => ({ x: x0, y: y0 })));
  return { given: choosePoints(corners, MOST_CORNERS).map((i) => corners[i]!), all: corners.length };
}

/** Where a free outline bends, in from the edge and below the face, each once. */
function outlineOrdinates(
  report: Report,
  cut: CutReport,
  index: number,
  drawn: readonly Loop[],
  at: (a: number, b: number) => { x: number; y: number },
  pose: CutPose,
): OrdinateDimension[] {
  const front = cut.side === 'front';
  const { given } = outlineCorners(drawn);
  const ordinates: OrdinateDimension[] = [];
  const seen = new Set<string>();
  const add = (kind: 'distance in' | 'depth', value: number, a: number, b: number, side: Side) => {
    const shown = viewFigure(
      report,
      `section.cuts[${index}].drawn`,
      value,
      kind === 'depth' ? 'cornerDeep' : 'cornerIn',
      {
        cut: safeText(cut.name),
      },
    );
    const key = `section.cuts[${index}].${kind} ${shown.text}`;
    if (seen.has(key) || value < 1e-6) return;
    seen.add(key);
    ordinates.push({ ...shown, key, side, point: at(a, b) });
  };
  const far: Side = pose.reachSide === 'above' ? 'above' : pose.reachSide === 'below' ? 'below' : 'left';
  for (const { x, y } of given) {
    const b = front ? y : report.section.thickness - y;
    if (x < cut.reach - 1e-6) add('distance in', x, x, b, far);
    if (b < cut.depthCut - 1e-6) add('depth', b, x, b, pose.depthSide);
  }
  return ordinates;
}
