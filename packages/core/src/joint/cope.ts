import { depthPath, line, mirrorCurve, SAME_LENGTH } from '@fielded/geometry';
import { reachAt } from '../machining/reach-at.ts';
import { sweepProfile } from '../machining/sweep.ts';
import type { OutlineProfile, Profile } from '../profile/profile.ts';
import { type Frame, jointOf } from './frame.ts';

/** The counter-profile for the rails' ends. Lengths mm. */
export interface CopeReport {
  /** How far the rail goes into the stile past its sight edge, and how thick its stub tenon is: the groove's width. */
  readonly tenon: { readonly length: number; readonly thickness: number };
  /** How far the sticking it closes on goes in from the sight edge, and down from the front face. */
  readonly sticking: { readonly reach: number; readonly depth: number };
  /** The widest gap along the line where the rail's end meets the sticking. */
  readonly gap: number;
  /** What the knife leaves of the rail's end: SVG path data, x in from the tenon's tip, y down from the front face, from the tip to the face. */
  readonly outline: string;
}

/** Places at which the gap between rail and sticking is measured, along the line where they meet. */
const PLACES = 17;

/**
 * What is cut off a rail's end, front face down, so that it closes on the sticking (formula F1): with A(b) how far the sticking is cut in from the
 * sight edge at b below the face, the rail's end lies L − A(b) in from the tip of its stub tenon, L long, down to the groove's front wall.
 *
 * Where the sticking reaches further in than the tenon is long, L is its reach. undefined for a frame without sticking, or
 * whose parts do not meet in a cope. The shoulder behind the tenon is square: a rebate as deep as the back lip is thick.
 */
export function copeProfile(frame: Frame): OutlineProfile | undefined {
  const { sticking, groove } = frame;
  const joint = jointOf(frame);
  if (sticking === undefined || joint.kind !== 'cope' || !(groove.setback > 0)) return undefined;
  if (sticking.depth > groove.setback) return undefined;
  const long = Math.max(joint.length, sticking.reach);
  if (!(long > 0)) return undefined;
  // What the sticking's own knife leaves of the stile's arris, run flat along it, measured from the tenon's tip.
  const mirrored = sweepProfile(sticking).map((c) => mirrorCurve(c, long));
  const first = mirrored[0]!;
  const chain = [
    line(0, groove.setback, long, groove.setback),
    line(long, groove.setback, long, first.y0),
    ...(long - first.x0 > SAME_LENGTH ? [line(long, first.y0, first.x0, first.y0)] : []),
    ...mirrored,
  ].filter((c) => Math.hypot(c.x1 - c.x0, c.y1 - c.y0) > SAME_LENGTH);
  return { shape: 'outline', reach: long, depth: groove.setback, chain };
}

/** The cope of a frame in the report; undefined where there is none. */
export function reportCope(frame: Frame): CopeReport | undefined {
  const profile = copeProfile(frame);
  if (profile === undefined || frame.sticking === undefined) return undefined;
  const { reach, depth } = frame.sticking;
  return {
    sticking: { reach, depth },
    tenon: { length: jointOf(frame).length, thickness: frame.groove.width },
    gap: widestGap(profile, frame.sticking),
    outline: depthPath(sweepProfile(profile)),
  };
}

/** The widest gap between what both knives leave, over the depth of the sticking, mm: 0 for the cope of that sticking. */
export function widestGap(cope: OutlineProfile, sticking: Profile): number {
  const [rail, stile] = [sweepProfile(cope), sweepProfile(sticking)];
  let widest = 0;
  for (let i = 1; i < PLACES; i++) {
    const depth = (sticking.depth * i) / PLACES;
    widest = Math.max(widest, reachAt(rail, depth) + reachAt(stile, depth) - cope.reach);
  }
  return widest;
}
