import { SAME_LENGTH } from '@fielded/geometry';
import { groovedParts } from '../door/groove-room.ts';
import { backLipOf } from '../joint/frame.ts';
import type { Job } from './job.ts';

/**
 * Whether a job, its sizes set anew, could still be read from its file: what is answered can be written there.
 *
 * Checks what reading checks of sizes that a setting can change: no cut takes the whole edge, the groove lies inside the frame, clear
 * of the back's worked arris and inside every part of a door, and the gaps leave some of it.
 */
export function canBeRead({ panel, frame, cuts, doors }: Job): boolean {
  const { groove, swellGap, endGap = 0, thickness, backEdge } = frame;
  const whole = (cut: Job['cuts'][number]) =>
    cut.depth >= (cut.run === 'over' ? panel.thickness : Math.min(panel.thickness, panel.measured));
  const backLip = backLipOf(frame);
  return (
    !cuts.some(whole) &&
    backLip >= -SAME_LENGTH &&
    (backEdge === undefined || backEdge.profile.depth < backLip - SAME_LENGTH) &&
    groove.depth <= thickness &&
    Math.max(swellGap, endGap) < groove.depth &&
    doors.every((door) => groovedParts(door).every(({ room }) => groove.depth < room))
  );
}
