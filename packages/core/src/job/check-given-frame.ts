import { SAME_LENGTH } from '@fielded/geometry';
import { backLipOf, type Frame } from '../joint/frame.ts';
import { checkProfile } from './check-given-profile.ts';
import { above, atLeast, groupAt, oneOf } from './given-values.ts';

/** A frame with its groove inside it, and room in the groove for a tongue. */
export function checkFrame(frame: Frame): void {
  const { thickness, groove, swellGap, endGap, joint, sticking, backEdge } = frame;
  above('frame.thickness', thickness);
  above('frame.groove.width', groove?.width);
  above('frame.groove.depth', groove.depth);
  atLeast('frame.groove.setback', groove.setback, 0);
  const backLip = backLipOf(frame);
  if (backLip < -SAME_LENGTH)
    throw new RangeError(
      `frame.groove must lie inside a frame ${thickness} thick, got setback and width of ${groove.setback + groove.width}`,
    );
  if (groove.depth > thickness)
    throw new RangeError(
      `frame.groove.depth must be at most the frame's thickness of ${thickness}, got ${groove.depth}`,
    );
  checkGap('frame.swellGap', swellGap, groove.depth);
  if (endGap !== undefined) checkGap('frame.endGap', endGap, groove.depth);
  if (joint !== undefined) {
    oneOf('frame.joint.kind', joint.kind, ['cope', 'tenon', 'mitre']);
    atLeast('frame.joint.length', joint.length, 0);
  }
  if (sticking !== undefined) checkProfile('frame.sticking', sticking);
  if (backEdge === undefined) return;
  const { profile } = groupAt('frame.backEdge', backEdge);
  checkProfile('frame.backEdge.profile', profile);
  if (profile.depth >= backLip - SAME_LENGTH)
    throw new RangeError(
      `frame.backEdge.profile.depth must be less than the back lip of ${backLip}, got ${profile.depth}`,
    );
}

function checkGap(at: string, gap: number, depth: number): void {
  atLeast(at, gap, 0);
  if (gap >= depth) throw new RangeError(`${at} must be less than the groove's depth of ${depth}, got ${gap}`);
}
