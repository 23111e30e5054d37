import { type Chain, flipCurve, pathData } from '@fielded/geometry';
import { sizeDoor } from '../door/door.ts';
import type { Job, Profile } from '../job/job.ts';
import { type Edge, type EdgeCut, makeEdge } from '../joint/edge.ts';
import { outlinePath } from '../joint/outline-path.ts';
import { profileChain } from '../profile/chain.ts';
import type { SimulationOptions } from '../spread/simulation.ts';
import { joinFrame } from './join.ts';
import { reportKnives } from './knives.ts';
import { findProblems, sortProblems } from './problems.ts';
import type { CutReport, Report, SectionReport } from './report.ts';
import { answerSeasons } from './seasons.ts';
import { answerSpread } from './spread.ts';

export interface EvaluateOptions {
  /** How a job's spread is simulated; by default 100,000 joints, normally spread, seed 1. */
  readonly simulation?: SimulationOptions;
}

/**
 * The whole answer to a job: the section its cuts leave, the tongue, the fit, and what is wrong.
 *
 * Pure and synchronous. The job is one that `readJob` gave without faults (or as complete); then it never throws: what
 * cannot be made is said in `problems`, and figures that do not exist are null.
 */
export function evaluate(job: Job, options: EvaluateOptions = {}): Report {
  const edge = makeEdge(job.panel, job.cuts);
  const { tongue, fit } = joinFrame(job, edge);
  const problems = findProblems(job, edge, fit);
  const knives = reportKnives(job);
  const spread = answerSpread(job, fit, options.simulation);
  const season = answerSeasons(job, fit);
  const further = [...(knives?.problems ?? []), ...spread.problems, ...season.problems];
  return {
    fielded: 1,
    title: job.title,
    units: job.units,
    panel: reportPanel(job),
    frame: reportFrame(job),
    section: reportSection(edge),
    tongue,
    fit,
    ...(knives && { knives: knives.reports }),
    ...(spread.report && { spread: spread.report }),
    ...(season.report && { season: season.report }),
    ...(job.doors.length > 0 && { doors: job.doors.map((door) => sizeDoor(door, tongue.insertion)) }),
    problems: further.length > 0 ? sortProblems([...problems, ...further]) : problems,
  };
}

function reportPanel({ panel: { thickness, measured, width } }: Job): Report['panel'] {
  return width === undefined ? { thickness, measured } : { thickness, measured, width };
}

function reportFrame({ frame }: Job): Report['frame'] {
  const { thickness, groove, swellGap, sticking } = frame;
  return {
    thickness,
    groove,
    swellGap,
    sticking: sticking === undefined ? null : placedPath(profileChain(sticking), 'front', 0),
  };
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

function reportCut({ cut, depthCut, sweep, removedArea, sharedArea, lost }: EdgeCut, thickness: number): CutReport {
  const { profile } = cut;
  const drawn = placedPath(sweep.drawn, cut.side, thickness);
  return {
    name: cut.name,
    side: cut.side,
    shape: profile.shape,
    run: cut.run,
    presented: (cut.tilt * 180) / Math.PI,
    depth: cut.depth,
    depthCut,
    reach: cut.reach,
    land: flat(profile, 'land', cut.reach - profile.reach),
    shoulder: flat(profile, 'shoulder', depthCut - profile.depth),
    removedArea,
    sharedArea,
    takenFromDrawing: lost === null ? 0 : lost.area,
    drawn,
    swept: sweep.swept === sweep.drawn ? drawn : placedPath(sweep.swept, cut.side, thickness),
  };
}

/** The land grows as the fence is set back, the shoulder as the spindle goes deeper; a rebate or a free outline has neither. */
function flat(profile: Profile, which: 'land' | 'shoulder', grown: number): number {
  if (profile.shape === 'outline' || profile.shape === 'rebate') return 0;
  return Math.max(0, profile[which] + grown);
}

/** A chain in cut coordinates as path data in the section, y down from the front face. */
function placedPath(chain: Chain, side: 'front' | 'back', thickness: number): string {
  const placed = side === 'front' ? chain.map((c) => flipCurve(c, thickness)) : chain;
  return pathData(placed, thickness, false);
}
