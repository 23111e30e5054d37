import { SAME_LENGTH } from '@fielded/geometry';
import { DEFAULTS } from '../job/defaults.ts';
import type { Frame } from '../joint/frame.ts';
import type { Shop } from '../shop/shop.ts';
import { checkName } from './complete-cuts.ts';
import { completeProfile } from './complete-profile.ts';
import { completeWood, type FileWood } from './complete-wood.ts';
import { type FaultDesk, orNaN } from './fault-desk.ts';
import type { JobFile, Loose } from './job-file.ts';

/** The frame, its groove and lip checked against its thickness. */
export function completeFrame(
  file: Loose<JobFile['frame']>,
  shop: Shop | undefined,
  desk: FaultDesk,
): Frame | undefined {
  const thickness = orNaN(file?.thickness);
  const width = orNaN(file?.groove?.width);
  const depth = orNaN(file?.groove?.depth);
  const setback = orNaN(file?.groove?.setback);
  const swellGap = orNaN(file?.swellGap);
  const { report } = desk;
  // Check the groove against the frame: a missing figure is NaN and fails no check.
  if (setback + width > thickness + SAME_LENGTH)
    report('fault.groove-behind-frame', 'frame.groove', { setback, width, sum: setback + width, frame: thickness });
  if (depth > thickness) report('fault.groove-deeper-than-frame', 'frame.groove.depth', { depth, frame: thickness });
  if (swellGap >= depth) report('fault.swell-gap-fills-groove', 'frame.swellGap', { gap: swellGap, depth });
  // Complete the profiles worked on the frame, and look for their heads.
  const sticking = completeProfile(file?.sticking, 'frame.sticking', desk);
  const backEdge = completeProfile(file?.backEdge, 'frame.backEdge', desk);
  for (const key of ['sticking', 'backEdge'] as const) {
    const head = file?.[key]?.head;
    if (head !== undefined) checkName('head', head, shop?.heads, `frame.${key}`, desk);
  }
  checkBackEdge(orNaN(backEdge?.depth), thickness - setback - width, desk);
  // Is every figure there? Otherwise there is no frame to return.
  if (Number.isNaN(thickness + width + depth + setback + swellGap)) return undefined;
  const endGap = file?.endGap;
  if (endGap !== undefined && endGap >= depth)
    report('fault.swell-gap-fills-groove', 'frame.endGap', { gap: endGap, depth });
  const joint = file?.joint && { kind: file.joint.kind ?? DEFAULTS.joint, length: file.joint.length ?? depth };
  const frame = {
    thickness,
    groove: { width, depth, setback },
    swellGap,
    ...(endGap !== undefined && { endGap }),
    ...(joint && { joint }),
    ...completeWood(file?.species as FileWood | undefined, shop),
    ...(file?.sawn && { sawn: file.sawn }),
  };
  return {
    ...frame,
    ...(sticking && { sticking }),
    ...(sticking && file?.sticking?.head !== undefined && { stickingHead: file.sticking.head }),
    ...(backEdge && {
      backEdge: { profile: backEdge, ...(file?.backEdge?.head !== undefined && { head: file.backEdge.head }) },
    }),
  };
}

/** A profile on the back's arris may not break into the groove. */
function checkBackEdge(depth: number, lip: number, { report }: FaultDesk): void {
  if (depth >= lip - SAME_LENGTH)
    report('fault.back-edge-in-groove', 'frame.backEdge', { depth, lip: Math.max(0, lip) });
}
