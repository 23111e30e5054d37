import { type Arrangement, listArrangements } from './arrangements.ts';
import { createJoint, type Joint } from './joint.ts';
import type { JointSizes, SpreadLimits } from './limits.ts';
import { simulateSpread } from './simulate.ts';
import type { SimulatedFigure, SimulatedSpread, Simulation, SimulationOptions } from './simulation.ts';
import { listSources } from './sources.ts';
import { type Stack, stackFigure } from './stack.ts';

/** The spread of a joint's clearance and of its face step, lengths mm. */
export interface SpreadReport {
  readonly clearance: Stack & { readonly simulated: Simulation };
  /** Front face against the frame's: with the panel hard against the back wall of the groove, and against the front wall. */
  readonly frontFace: {
    readonly least: Stack & { readonly simulated: SimulatedFigure | null };
    readonly most: Stack & { readonly simulated: SimulatedFigure | null };
  };
  /** From the panel's edge to the groove's bottom; negative: the panel is that much too large at this edge. */
  readonly bottomGap: Stack;
  /** Clearances that part tight, sliding and loose. */
  readonly limits: { readonly snug: number; readonly loose: number };
  /** Every way to run the cuts under or over, narrowest first. */
  readonly arrangements: readonly Arrangement[];
}

/** What a check makes when nothing else is asked for. */
export const DEFAULT_SIMULATION: SimulationOptions = { count: 100_000, seed: 1, distribution: 'normal' };

/** For answers that show nothing of a simulation, such as a quote or a cutting list: it takes longer than all the rest of a report. */
export const ONE_JOINT: SimulationOptions = { ...DEFAULT_SIMULATION, count: 1 };

/**
 * The spread of a joint three ways (worst case, root-sum-square, simulated), what each source gives to it, and what running
 * the cuts the other way over would do.
 *
 * The job must have a tongue at its nominal sizes. `joint` is the job's own, made for how its wood answers to moisture (see `swellingOf`).
 *
 * @throws RangeError for a ± that is negative or not a number, naming it.
 */
export function reportSpread(
  job: JointSizes,
  limits: SpreadLimits,
  joint: Joint = createJoint(job),
  options: SimulationOptions = DEFAULT_SIMULATION,
): SpreadReport {
  const sources = listSources(joint.cuts, limits);
  const simulated = simulateSpread(joint, sources, job.fit, options);
  return {
    clearance: { ...stackFigure(joint, sources, 'clearance'), simulated: simulated.clearance },
    frontFace: {
      least: { ...stackFigure(joint, sources, 'frontLeast'), simulated: simulated.frontFace.least },
      most: { ...stackFigure(joint, sources, 'frontMost'), simulated: simulated.frontFace.most },
    },
    bottomGap: stackFigure(joint, sources, 'bottomGap'),
    limits: { snug: job.fit.snug, loose: job.fit.loose },
    arrangements: listArrangements(job, limits, joint),
  };
}

/** The same report with other joints simulated, as after a run that was too long to wait for. */
export function withSimulated(report: SpreadReport, simulated: SimulatedSpread): SpreadReport {
  const { least, most } = report.frontFace;
  return {
    ...report,
    clearance: { ...report.clearance, simulated: simulated.clearance },
    frontFace: {
      least: { ...least, simulated: simulated.frontFace.least },
      most: { ...most, simulated: simulated.frontFace.most },
    },
  };
}
