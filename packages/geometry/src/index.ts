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
} from './along.ts';
export { arcBeziers, type Bezier } from './arc-beziers.ts';
export type { Heading } from './biarc.ts';
export { type Box, boxesOverlap, growBox, joinBoxes, lineMeetsBox } from './box.ts';
export { chainExtent } from './chain-extent.ts';
export { chainLoops } from './chain-loops.ts';
export { crossingsAt, curvesBetween, curvesOutside, joinCurves, spanAt, swapAxes } from './clip.ts';
export { type Cropped, cropLoops } from './crop.ts';
export { meetCarriers } from './crossing.ts';
export { arc, type Chain, type Curve, flipCurve, line, shiftCurve, turnCurve } from './curve.ts';
export { curveBox, curveMeetsBox } from './curve-box.ts';
export { distanceTo } from './distance.ts';
export { runsForward, upperEnvelope } from './envelope.ts';
export { FIT_TOLERANCE, fitArcs, type SmoothCurve } from './fit-arcs.ts';
export { fitBezier } from './fit-bezier.ts';
export { fitPoints, SCAN_TOLERANCE } from './fit-points.ts';
export { type Loop, loopsBox, type Placing, placeLoops, polygon, rectangle, reverseCurves } from './loop.ts';
export { type Moments, momentsUnder } from './moments.ts';
export { offsetLoops } from './offset/offset.ts';
export type { Join } from './offset/parallel.ts';
export { depthPath, isLongerPath, loopsData, pathData } from './path-data.ts';
export { findPeak } from './peak.ts';
export { heightAt, isPiece, type Piece, splitCurve } from './piece.ts';
export type { Point } from './point.ts';
export { type Pose, poseDirection, poseLoops, posePoint } from './pose.ts';
export { readLoops, readReportPath } from './report-path.ts';
export { findSelfCrossing } from './self-crossing.ts';
export { liesOn, type Strip, walkStrips } from './strips.ts';
export { type SvgArc, svgArc } from './svg-arc.ts';
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
} from './thread.ts';
export { SAME_LENGTH } from './tolerance.ts';
export type { ArcFit, Corners } from './track.ts';
