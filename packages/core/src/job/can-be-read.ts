import type { Job } from './job.ts';

/** A sum of sizes past a bound by less than this, mm, is rounding. */
const ROUNDING = 1e-9;

/**
 * Whether a job, its sizes set anew, could still be read from its file: what is answered can be written there.
 *
 * Asks what reading asks of sizes that a setting can change: no cut takes the whole edge, the groove lies inside the frame and
 * inside every part of a door, and the swell gap leaves some of it.
 */
export function canBeRead({ panel, frame, cuts, doors }: Job): boolean {
  const { groove, swellGap, thickness } = frame;
  const whole = (cut: Job['cuts'][number]) =>
    cut.depth >= (cut.run === 'over' ? panel.thickness : Math.min(panel.thickness, panel.measured));
  return (
    !cuts.some(whole) &&
    groove.setback + groove.width <= thickness + ROUNDING &&
    groove.depth <= thickness &&
    swellGap < groove.depth &&
    doors.every(({ stile, rail, muntin, across, up }) => {
      const muntins = across > 1 || up > 1 ? muntin / 2 : Number.POSITIVE_INFINITY;
      return groove.depth < Math.min(stile, rail, muntins);
    })
  );
}
