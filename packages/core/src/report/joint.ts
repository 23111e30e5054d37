import type { Job, Profile } from '../job/job.ts';
import { reportCope } from '../joint/cope.ts';
import type { Edge, EdgeCut } from '../joint/edge.ts';
import { edgePath, outlinePath } from '../joint/outline-path.ts';
import { toDegrees } from '../measure/angle.ts';
import type { Problem } from '../problem/problem.ts';
import { termsOf } from '../problem/terms.ts';
import { profileChain } from '../profile/chain.ts';
import type { PreparedJob } from './prepared-job.ts';
import { findProblems, sortProblems } from './problems.ts';
import type { CutReport, Report, SectionReport } from './report.ts';
import { findSizeProblems } from './size-problems.ts';
import { stateJoint } from './statements.ts';

/** What every report says: the section its cuts leave, the tongue, the fit, and the problems of these, without advice. */
export function answerJoint(prepared: PreparedJob): Report {
  const { job, fit } = prepared;
  const problems = findJointProblems(prepared);
  return { ...describeJoint(prepared), statements: stateJoint(job, fit.verdict, problems), problems };
}

/** What is wrong with a joint, worst first, without advice. */
export function findJointProblems({ job, edge, tongue, fit }: PreparedJob): Problem[] {
  return sortProblems([...findProblems(job, edge, fit), ...findSizeProblems(job, edge, tongue)]);
}

/** The joint's part of a report, without anything said of it. */
export function describeJoint({ job, edge, tongue, fit }: PreparedJob): Omit<Report, 'statements' | 'problems'> {
  return {
    fielded: 1,
    title: job.title,
    units: job.units,
    terms: termsOf(job),
    ...(job.language && { language: job.language }),
    panel: reportPanel(job),
    frame: reportFrame(job),
    section: reportSection(edge),
    tongue,
    fit: { ...fit, snug: job.fit.snug, loose: job.fit.loose },
  };
}

function reportPanel({ panel: { thickness, measured, width, film } }: Job): Report['panel'] {
  return { thickness, measured, ...(width !== undefined && { width }), ...(film ? { film } : {}) };
}

function reportFrame({ frame }: Job): Report['frame'] {
  const { thickness, groove, swellGap, sticking, backEdge } = frame;
  const cope = reportCope(frame);
  return {
    thickness,
    groove,
    swellGap,
    sticking: sticking === undefined ? null : edgePath(profileChain(sticking), 'front', 0),
    ...(cope && { cope }),
    ...(backEdge && { backEdge: reportBackEdge(backEdge.profile, thickness) }),
  };
}

function reportBackEdge(profile: Profile, thickness: number): NonNullable<Report['frame']['backEdge']> {
  const { reach, depth } = profile;
  return { reach, depth, outline: edgePath(profileChain(profile), 'back', thickness) };
}

function reportSection({ section, cuts }: Edge): SectionReport {
  const { thickness, width, removed } = section;
  return {
    thickness,
    cuts: cuts.map((made) => reportCut(made, thickness)),
    removedArea: removed.area,
    removedCentroid:
      removed.area > 0 ? { fromEdge: removed.x / removed.area, fromBack: removed.y / removed.area } : null,
    outline: outlinePath(section),
    width,
  };
}

function reportCut(
  { cut, depthCut, sweep, faceEnd, removedArea, sharedArea, lost }: EdgeCut,
  thickness: number,
): CutReport {
  const { profile } = cut;
  const drawn = edgePath(sweep.drawn, cut.side, thickness);
  return {
    name: cut.name,
    side: cut.side,
    shape: profile.shape,
    run: cut.run,
    presented: toDegrees(cut.tilt),
    depth: cut.depth,
    depthCut,
    reach: cut.reach,
    faceEnd,
    land: flat(profile, 'land', cut.reach - profile.reach),
    shoulder: flat(profile, 'shoulder', depthCut - profile.depth),
    removedArea,
    sharedArea,
    takenFromDrawing: lost === null ? 0 : lost.area,
    drawn,
    swept: sweep.swept === sweep.drawn ? drawn : edgePath(sweep.swept, cut.side, thickness),
  };
}

/** The land grows as the fence is set back, the shoulder as the spindle goes deeper; a rebate or a free outline has neither. */
function flat(profile: Profile, which: 'land' | 'shoulder', grown: number): number {
  if (profile.shape === 'outline' || profile.shape === 'rebate') return 0;
  return Math.max(0, profile[which] + grown);
}
