import { type ClearedRegion, type CutReport, cutOutline, type Report } from '@fielded/core';
import {
  type Box,
  flipCurve,
  joinCurves,
  type Loop,
  loopsBox,
  poseDirection,
  poseLoops,
  posePoint,
  readLoops,
} from '@fielded/geometry';
import type { Sketch } from '../dimension/sketch.ts';
import { hatchLoops } from '../geometry/hatch.ts';
import { type Item, path } from '../scene.ts';
import { sayView } from '../words/english/view.ts';
import { type CutPose, poseCut } from './cut-pose.ts';
import { drawCutter, drawFence, drawMachineTable, drawSpindle } from './machine.ts';
import { PANEL_HATCH, shortenTo, splitBreaks } from './panel-part.ts';
import { dimensionProfile } from './profile-dimensions.ts';

/** How far the knife is drawn beyond the wood, mm on paper. */
const BEYOND = 9;

/** One cut as the panel lies at the machine: the wood before and after it, the knife, what it runs on and against, and its sizes. */
export function sketchCut(report: Report, index: number, scale: number): Sketch {
  const { cuts, thickness, width } = report.section;
  const cut = cuts[index]!;
  const reach = Math.max(...cuts.map((other) => other.reach));
  const shown = shortenTo(width, reach, scale);
  const pose = poseCut(cut, thickness, scale);
  const stateAfter = (count: number): Loop[] => {
    const outline = cutOutline(
      thickness,
      width,
      cuts.slice(0, count).map((made) => regionOf(made, thickness)),
    );
    return poseLoops(
      pose.pose,
      readLoops(outline).map((loop) => shown.shorten(loop)),
    );
  };
  const before = stateAfter(index);
  const after = stateAfter(index + 1);
  const breakAt = posePoint(pose.pose, shown.to, 0);
  const { edges, breaks } = splitBreaks(after, breakAt, pose.against === 'fence');
  const old = splitBreaks(before, breakAt, pose.against === 'fence').edges;
  const swept = poseLoops(pose.pose, readLoops(cut.swept)).flatMap(({ curves }) => curves);
  const box = loopsBox(before)!;
  const machine = machineOf(report, pose, cut, box, scale);
  const cutter = cutterOf(pose, cut, swept);
  const spindle = spindleOf(report, pose, cut, box, scale);
  const items: Item[] = [
    path('removed', 'removed', before),
    path('old', 'old', joinCurves(old)),
    path('wood', 'wood', after),
    path('hatch', 'hatch', joinCurves(hatchLoops(after, PANEL_HATCH, true))),
    path('break', 'break', breaks),
    path('outline', 'outline', joinCurves(edges)),
    cutter,
    machine.items,
    ...(spindle === null ? [] : [spindle.item]),
  ];
  if (cut.takenFromDrawing > 0.005)
    items.push(path('drawn', 'trouble-thin', poseLoops(pose.pose, readLoops(cut.drawn))));
  const { tiers, leaders, angles, ordinates } = dimensionProfile(report, index, pose);
  return {
    items,
    outlines: [...edges, ...old, ...breaks.flatMap(({ curves }) => curves), ...outlinesOf(machine.items)],
    woods: after,
    around: spindle === null ? machine.box : { ...machine.box, x0: Math.min(machine.box.x0, spindle.left) },
    tiers,
    interiors: [],
    leaders,
    angles,
    ordinates,
  };
}

/** Lines that belong to items, for texts to keep clear of. */
function outlinesOf(item: Item): Loop['curves'][number][] {
  if (item.kind === 'group') return item.items.flatMap(outlinesOf);
  return item.kind === 'path' ? item.loops.flatMap(({ curves }) => curves) : [];
}

function machineOf(
  report: Report,
  { pose, against }: CutPose,
  cut: CutReport,
  wood: NonNullable<ReturnType<typeof loopsBox>>,
  scale: number,
) {
  if (against === 'fence') return drawFence(report, wood, -(cut.reach * scale) - 4, cut.depthCut * scale + 4);
  const under = cut.run === 'under';
  return drawMachineTable(report, wood, under ? posePoint(pose, cut.reach, 0).x + 4 : wood.x0 - 6);
}

function cutterOf({ pose }: CutPose, cut: CutReport, swept: Loop['curves']): Item {
  const out = poseDirection(pose, Math.PI);
  const off = poseDirection(pose, cut.side === 'front' ? -Math.PI / 2 : Math.PI / 2);
  const along = (angle: number, length: number) => ({ x: Math.cos(angle) * length, y: Math.sin(angle) * length });
  return drawCutter(swept, along(out, BEYOND), along(off, BEYOND / 2));
}

/** The axis of a spindle that is tilted; null where it stands plumb, as it does for flat work and for work on edge. */
function spindleOf(report: Report, { pose, against }: CutPose, cut: CutReport, wood: Box, scale: number) {
  if (against === 'fence' || cut.presented < 0.05) return null;
  const tilt = (cut.presented * Math.PI) / 180;
  const front = cut.side === 'front';
  // Formula 4: along the axis, from the edge towards the worked face.
  const direction = poseDirection(pose, Math.atan2(front ? -Math.cos(tilt) : Math.cos(tilt), Math.sin(tilt)));
  const face = posePoint(pose, 0, front ? cut.depthCut / 2 : 0).y;
  const middle = front ? face : face - ((pose.yy < 0 ? -1 : 1) * cut.depthCut * scale) / 2;
  return drawSpindle(wood, middle, direction, sayView('machine.spindle', { tilt: cut.presented }, report));
}

/** The wood that a cut clears, in cut coordinates: y down from the worked face. */
export function regionOf(cut: CutReport, thickness: number): ClearedRegion {
  const curves = readLoops(cut.swept).flatMap((loop) => loop.curves);
  if (cut.side === 'front') return { side: 'front', edge: curves };
  return { side: 'back', edge: curves.map((curve) => flipCurve(curve, thickness)) };
}
