export {
  arcAngle,
  arcAngles,
  cornerAngle,
  curveLength,
  pointAlong,
  pointAt,
  quarterAngles,
  SMOOTH_JOINT,
  splitAtExtremes,
} from './curve/along.ts';
export { type Box, boxesOverlap, growBox, joinBoxes, lineMeetsBox } from './curve/box.ts';
export { meetCarriers } from './curve/crossing.ts';
export {
  arc,
  type Chain,
  type Curve,
  flipCurve,
  line,
  mirrorCurve,
  reverseCurve,
  shiftCurve,
  turnCurve,
  withEnds,
} from './curve/curve.ts';
export { curveBox, curveMeetsBox } from './curve/curve-box.ts';
export { distanceTo } from './curve/distance.ts';
export type { Heading } from './curve/heading.ts';
export { heightAt, isPiece, type Piece, splitCurve } from './curve/piece.ts';
export type { Point } from './curve/point.ts';
export { SAME_LENGTH } from './curve/tolerance.ts';
export { arcBeziers, type Bezier } from './fit/arc-beziers.ts';
export { FIT_TOLERANCE, fitArcs, type SmoothCurve } from './fit/fit-arcs.ts';
export { fitBezier } from './fit/fit-bezier.ts';
export { fitPoints, SCAN_TOLERANCE } from './fit/fit-points.ts';
export { findPeak } from './fit/peak.ts';
export type { ArcFit, Corners } from './fit/track.ts';
export { chainExtent } from './loop/chain-extent.ts';
export { chainLoops } from './loop/chain-loops.ts';
export { crossingsAt, curvesBetween, curvesOutside, joinCurves, spanAt, swapAxes } from './loop/clip.ts';
export { type Cropped, cropLoops } from './loop/crop.ts';
export { type Loop, loopsBox, type Placing, placeLoops, polygon, rectangle, reverseCurves } from './loop/loop.ts';
export { type Pose, poseDirection, poseLoops, posePoint } from './loop/pose.ts';
export { findSelfCrossing } from './loop/self-crossing.ts';
export { offsetLoops } from './offset/offset.ts';
export type { Join } from './offset/parallel.ts';
export { depthPath, isLongerPath, loopsData, paperData, pathData } from './path/path-data.ts';
export { readLoops, readReportPath } from './path/report-path.ts';
export { type SvgArc, svgArc } from './path/svg-arc.ts';
export { runsForward, upperEnvelope } from './strips/envelope.ts';
export { type Moments, momentsUnder } from './strips/moments.ts';
export { liesOn, type Strip, walkStrips } from './strips/strips.ts';
export {
  curveOver,
  lastPlace,
  levelThread,
  placeAt,
  type Share,
  sharesOf,
  type Thread,
  threadChain,
  threadHeight,
} from './strips/thread.ts';
