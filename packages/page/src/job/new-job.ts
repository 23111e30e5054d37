import { readJobData, type Units } from '@fielded/core';
import { writeLength } from '../entry/read-entry.ts';
import { plainFault } from '../words/plain-fault.ts';
import { reportJoint } from './answer-joint.ts';
import type { Data } from './data.ts';

/** What a maker says to begin with. Lengths mm. */
export interface NewJob {
  readonly title: string;
  readonly units: Units;
  readonly stock: number;
  readonly frame: number;
  readonly groove: { readonly width: number; readonly depth: number; readonly setback: number };
  readonly swellGap: number;
  readonly front: StartShape;
  readonly back: StartShape | 'none';
  /** How far the panel's face stands before the frame's; 0 for flush, less for recessed. */
  readonly proud: number;
}

/** Shapes that a job can be begun with. */
export type StartShape = 'rebate' | 'bevel' | 'cove' | 'ovolo' | 'ogee';

/** A job made up from what was said, or why none can be. `face` is what the face came to where the back takes no cut; `warnings` what to think of all the same. */
export type Begun =
  | { readonly data: Data; readonly face: number; readonly warnings: readonly string[] }
  | { readonly reason: string; readonly about: string };

/** Clearance that a job begins with, mm: what a file's own default aims at, or 1/64 in so that depths come out in fractions. */
const TARGET: Readonly<Record<Units, number>> = { mm: 0.2, in: 25.4 / 64 };
/** Flat beyond what goes into the groove, mm: the tongue stays parallel a little past the frame's edge. */
const SPARE_LAND = 2;
const USUAL_REACH = 38;
const USUAL_BACK_REACH = 14;
/** The thinnest lip of a cut that is worth cutting, mm. */
const LEAST_DEPTH = 0.4;
/** An upright step at the field, mm, where the shape has room for one. */
const STEP = 1.5;

/**
 * A job that fits: front as deep as the groove lies back, plus what the face stands proud; the back takes what is left
 * over the groove's width less the clearance. Without a cut on the back the front takes it all, and the face follows.
 */
export function beginJob(ask: NewJob): Begun {
  const { stock, frame, groove, swellGap, proud } = ask;
  const tongue = groove.width - TARGET[ask.units];
  const insertion = groove.depth - swellGap;
  if (insertion <= 0) return { about: 'swellGap', reason: 'The gap for swelling leaves nothing of the groove.' };
  if (groove.setback + groove.width > frame)
    return { about: 'groove', reason: 'The groove reaches past the back of the frame.' };
  const spare = stock - tongue;
  if (spare < LEAST_DEPTH) return { about: 'stock', reason: 'The stock is no thicker than the groove is wide.' };
  const frontDepth = ask.back === 'none' ? spare : groove.setback + proud;
  const backDepth = spare - frontDepth;
  if (frontDepth < LEAST_DEPTH)
    return { about: 'proud', reason: 'So far recessed, nothing is left to cut on the front.' };
  if (ask.back !== 'none' && backDepth < LEAST_DEPTH)
    return {
      about: 'back',
      reason: 'This stock is used up by the front: choose no cut on the back, or thicker stock.',
    };
  const write = (mm: number) => writeLength(mm, ask.units, ask.units);
  const land = insertion + SPARE_LAND;
  const cut = (name: string, side: 'front' | 'back', shape: StartShape, depth: number, usual: number) => ({
    name,
    side,
    profile: drawProfile(shape, depth, land, usual, side === 'front', write),
    run: side === 'front' ? 'under' : 'over',
  });
  const data: Data = {
    fielded: 1,
    title: ask.title,
    units: ask.units,
    panel: { thickness: write(stock) },
    frame: {
      thickness: write(frame),
      groove: { width: write(groove.width), depth: write(groove.depth), setback: write(groove.setback) },
      swellGap: write(swellGap),
    },
    cuts: [
      cut('raise', 'front', ask.front, frontDepth, USUAL_REACH),
      ...(ask.back === 'none' ? [] : [cut('back relief', 'back', ask.back, backDepth, USUAL_BACK_REACH)]),
    ],
  };
  const { job, faults } = readJobData(data);
  if (job === null) return { about: '', reason: faults[0]?.message ?? 'Such a job cannot be made.' };
  // Nothing is said to fit that the engine does not say fits.
  const { fit, problems } = reportJoint(job);
  const [wrong] = problems.filter(({ severity }) => severity === 'error');
  if (wrong !== undefined || fit.verdict !== 'sliding') {
    const reason = wrong === undefined ? 'These sizes leave no tongue that slides in.' : plainFault(wrong, ask.units);
    return { about: '', reason };
  }
  const warnings = problems.filter(({ severity }) => severity === 'warning').map((each) => plainFault(each, ask.units));
  return { data, face: frontDepth - groove.setback, warnings };
}

/** A profile of the depth wanted: reach and step as usual, the reach longer where the shape's own arc asks for it. */
function drawProfile(
  shape: StartShape,
  depth: number,
  land: number,
  usual: number,
  stepped: boolean,
  write: (mm: number) => Data,
): Data {
  if (shape === 'rebate') return { shape, reach: write(Math.max(usual, land)), depth: write(depth) };
  const shoulder = stepped && depth > 3 * STEP ? STEP : 0;
  // A round may not rise more than it runs.
  const run = shape === 'bevel' ? 3 : depth - shoulder;
  const reach = Math.max(usual, Math.ceil(land + run));
  return {
    shape,
    reach: write(reach),
    depth: write(depth),
    land: write(land),
    ...(shoulder > 0 && { shoulder: write(shoulder) }),
  };
}
