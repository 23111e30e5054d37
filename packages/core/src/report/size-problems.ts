import { SAME_LENGTH } from '@fielded/geometry';
import { smallestPanel } from '../door/door.ts';
import { rulesOf } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { type Edge, fieldStart } from '../joint/edge.ts';
import type { TongueReport } from '../joint/fit-report.ts';
import { backLipOf } from '../joint/frame.ts';
import { toDegrees } from '../measure/angle.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say-joint.ts';

/**
 * Slips that still give a section: sizes in another unit, raises that meet, a feather edge, a
 * lip too thin to hold, a cut that takes nothing.
 */
export function findSizeProblems(job: Job, edge: Edge, tongue: TongueReport): Problem[] {
  return [
    ...unitProblems(job),
    ...missedProblems(job, edge),
    ...tongueProblems(job, tongue),
    ...lipProblems(job),
    ...raiseProblems(job, fieldStart(edge) ?? 0),
    ...leanProblems(job),
  ];
}

/** Stock outside these, mm, was mostly meant in another unit: 3/4 written in a file of millimetres, 19 in one of inches. */
const USUAL_STOCK = { least: 3, most: 100 };

function unitProblems(job: Job): Problem[] {
  const sizes = [
    ['panel.thickness', job.panel.thickness, 'size.stock'],
    ['panel.measured', job.panel.measured, 'size.measured'],
    ['frame.thickness', job.frame.thickness, 'size.frame'],
  ] as const;
  return sizes.flatMap(([at, thickness, size]) => {
    if (thickness >= USUAL_STOCK.least && thickness <= USUAL_STOCK.most) return [];
    // Usually both thicknesses raise the same problem: report it once.
    if (at === 'panel.measured' && thickness === job.panel.thickness) return [];
    const other = told(job.units === 'mm' ? 'unit.inches' : 'unit.millimetres', {});
    return [sayProblem('another-unit', at, { size: told(size, {}), thickness, other }, job)];
  });
}

function missedProblems(job: Job, { cuts }: Edge): Problem[] {
  return cuts.flatMap(({ cut, removedArea, depthCut }, k) => {
    if (removedArea > 0) return [];
    const at = `cuts[${k}].depth`;
    const about = { cut: cut.name };
    return depthCut < 0
      ? [sayProblem('cut-misses', at, { cut: cut.name, by: -depthCut }, job, { about })]
      : [sayProblem('cut-misses.touches', at, { cut: cut.name }, job, { about })];
  });
}

function tongueProblems(job: Job, { thicknessAtTip }: TongueReport): Problem[] {
  const least = rulesOf(job).leastTongue;
  if (thicknessAtTip === null || thicknessAtTip >= least - SAME_LENGTH) return [];
  return [sayProblem('feather-edge', 'cuts', { tip: thicknessAtTip, least }, job)];
}

/** Run over the stock, a tilted spindle leans towards the panel, with head and nut over the wood. */
function leanProblems(job: Job): Problem[] {
  return job.cuts.flatMap(({ name: cut, run, tilt }, k) => {
    if (run !== 'over' || tilt === 0 || tilt === Math.PI / 2) return [];
    return [sayProblem('leans-over-panel', `cuts[${k}].run`, { cut, tilt: toDegrees(tilt) }, job, { about: { cut } })];
  });
}

/** A lip thinner than this, mm, breaks out as it is ploughed or splits off in use: common practice. */
export const LEAST_LIP = 3;

function lipProblems(job: Job): Problem[] {
  const lips = [
    ['front', job.frame.groove.setback],
    ['back', backLipOf(job.frame)],
  ] as const;
  return lips.flatMap(([face, lip]) => {
    const side = told(`lip.${face}`, {});
    if (lip <= NOTHING) return [sayProblem('no-lip', 'frame.groove', { side }, job)];
    return lip < LEAST_LIP ? [sayProblem('thin-lip', 'frame.groove', { side, lip, least: LEAST_LIP }, job)] : [];
  });
}

/** No lip at all, mm: less than rounding leaves. */
const NOTHING = 1e-6;

/** Raises that leave the face `reach` mm in from opposite edges meet where the panel is no larger than both together. */
function raiseProblems(job: Job, reach: number): Problem[] {
  const both = 2 * reach;
  if (both === 0) return [];
  const doors = job.doors.flatMap((door, k) => {
    const { width, height } = smallestPanel(job, door);
    if (Math.min(width, height) > both + SAME_LENGTH) return [];
    const figures = { door: door.name, width, height, both, reach };
    return [sayProblem('raises-meet.door', `doors[${k}]`, figures, job, { about: { door: door.name } })];
  });
  const { width } = job.panel;
  if (width === undefined || width > both + SAME_LENGTH) return doors;
  return [sayProblem('raises-meet.panel', 'panel.width', { width, both, reach }, job), ...doors];
}
