import type { CutReport } from '@fielded/core';
import type { Pose } from '@fielded/geometry';
import type { Side } from '../dimension/linear.ts';

/** How a panel lies at the machine for one cut, and where its dimensions then stand. */
export interface CutPose {
  readonly pose: Pose;
  /** `table`: flat on the table or on the tilted spindle's table; `fence`: on edge against the fence. */
  readonly against: 'table' | 'fence';
  /** Where distances in from the edge and distances below the worked face are dimensioned. */
  readonly reachSide: Side;
  readonly depthSide: Side;
  readonly words: string;
}

/** The panel as it is run: section coordinates (x in from the edge, y down from the front face) to the paper. */
export function poseCut(cut: CutReport, thickness: number, scale: number): CutPose {
  const front = cut.side === 'front';
  const worked = front ? 'front' : 'back';
  const other = front ? 'back' : 'front';
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
      words: `on edge, ${worked} face against the fence`,
    };
  }
  const workedUp = cut.run === 'over';
  const frontUp = workedUp === front;
  const pose = { xx: scale, xy: 0, yx: 0, yy: frontUp ? scale : -scale, x0: 0, y0: frontUp ? 0 : thickness * scale };
  const tilt = cut.presented > 1e-9 ? `, spindle tilted by ${Math.round(cut.presented * 10) / 10}°` : '';
  return {
    pose,
    against: 'table',
    reachSide: workedUp ? 'above' : 'below',
    depthSide: 'left',
    words: workedUp ? `run over, ${other} face on the table${tilt}` : `run under, ${worked} face on the table${tilt}`,
  };
}
