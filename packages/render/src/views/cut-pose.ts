import type { CutReport } from '@fielded/core';
import type { Pose } from '@fielded/geometry';
import type { Side } from '../dimension/linear.ts';
import { sayView } from '../words/english/view.ts';
import type { InVoice } from '../words/lengths.ts';

/** How a panel lies at the machine for one cut, and where its dimensions then stand. */
export interface CutPose {
  readonly pose: Pose;
  /** `table`: flat on the table or on the tilted spindle's table; `fence`: on edge against the fence. */
  readonly against: 'table' | 'fence';
  /** Where distances in from the edge and distances below the worked face are dimensioned. */
  readonly reachSide: Side;
  readonly depthSide: Side;
}

/** Poses the panel as it is run: section coordinates (x in from the edge, y down from the front face) to the paper, at a scale. */
export function poseCut(cut: CutReport, thickness: number, scale: number): CutPose {
  const front = cut.side === 'front';
  if (Math.abs(cut.presented - 90) < 1e-9) {
    // The worked face stands upright at the left, the edge on the table.
    const pose = front
      ? { xx: 0, xy: scale, yx: -scale, yy: 0, x0: 0, y0: 0 }
      : { xx: 0, xy: -scale, yx: -scale, yy: 0, x0: thickness * scale, y0: 0 };
    return {
      pose,
      against: 'fence',
      reachSide: 'left',
      depthSide: 'below',
    };
  }
  const workedUp = cut.run === 'over';
  const frontUp = workedUp === front;
  const pose = { xx: scale, xy: 0, yx: 0, yy: frontUp ? scale : -scale, x0: 0, y0: frontUp ? 0 : thickness * scale };
  return {
    pose,
    against: 'table',
    reachSide: workedUp ? 'above' : 'below',
    depthSide: 'left',
  };
}

/** How a panel lies at the machine for a cut, in words: which face bears, and how the spindle leans. */
export function sayPose({ side, run, presented }: CutReport, voice: InVoice): string {
  if (Math.abs(presented - 90) < 1e-9) return sayView(`pose.edge.${side}`, {}, voice);
  const bearing = run === 'under' ? side : side === 'front' ? 'back' : 'front';
  if (presented <= 1e-9) return sayView(`pose.${run}.${bearing}`, {}, voice);
  return sayView(`pose.${run}.${bearing}.tilted`, { tilt: presented }, voice);
}
