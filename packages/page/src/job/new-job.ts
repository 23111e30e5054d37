import { readJobData, type Units } from '@fielded/core';
import { plainFault } from '../words/plain-fault.ts';
import { reportJoint } from './answer-joint.ts';
import type { Data } from './data.ts';
import { writeLength } from './write-length.ts';

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

/** Why no such job can be begun, and the size that is about; '' for none. */
interface Refused {
  readonly reason: string;
  readonly about: string;
}

/** A job made of what was asked for, or why there is none. `face` is how far its face stands proud, mm; `warnings` are the engine's. */
export type Begun = Refused | { readonly data: Data; readonly face: number; readonly warnings: readonly string[] };

const INCH = 25.4;

/** What a job begins with, mm, in round figures of its unit. */
const USUAL: Readonly<Record<Units, Usual>> = {
  mm: { clearance: 0.2, spareLand: 2, reach: 38, backReach: 14, step: 1.5, grain: 1 },
  in: {
    clearance: INCH / 64,
    spareLand: INCH / 16,
    reach: 1.5 * INCH,
    backReach: (9 * INCH) / 16,
    step: INCH / 16,
    grain: INCH / 32,
  },
};

interface Usual {
  /** What a file's own default aims at, or 1/64 in so that depths come out in fractions. */
  readonly clearance: number;
  /** Flat beyond what goes into the groove: the tongue stays parallel a little past the frame's edge. */
  readonly spareLand: number;
  readonly reach: number;
  readonly backReach: number;
  /** An upright step at the field, where the shape has room for one. */
  readonly step: number;
  /** A reach that has to be longer is a whole number of these. */
  readonly grain: number;
}

/** The thinnest lip of a cut that is worth cutting, mm. */
const LEAST_DEPTH = 0.4;

/**
 * A job that fits: front as deep as the groove lies back, plus what the face stands proud; the back takes what is left
 * over the groove's width less the clearance. Without a cut on the back the front takes it all, and the face follows.
 */
export function beginJob(ask: NewJob): Begun {
  const depths = splitDepths(ask);
  if ('reason' in depths) return depths;
  const data = writeNewJob(ask, depths);
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
  return { data, face: depths.front - ask.groove.setback, warnings };
}

/** How deep front and back are cut, mm. */
interface Depths {
  readonly front: number;
  readonly back: number;
}

/** Shares what the stock is thicker than the tongue between front and back, or says why it cannot. */
function splitDepths({ stock, frame, groove, swellGap, proud, back, units }: NewJob): Depths | Refused {
  if (groove.depth - swellGap <= 0) return { about: 'swellGap', reason: 'The swell gap leaves nothing of the groove.' };
  if (groove.setback + groove.width > frame)
    return { about: 'groove', reason: 'The groove reaches past the back of the frame.' };
  const spare = stock - (groove.width - USUAL[units].clearance);
  if (spare < LEAST_DEPTH) return { about: 'stock', reason: 'The stock is no thicker than the groove is wide.' };
  const front = back === 'none' ? spare : groove.setback + proud;
  if (front < LEAST_DEPTH) return { about: 'proud', reason: 'So far recessed, nothing is left to cut on the front.' };
  if (back !== 'none' && spare - front < LEAST_DEPTH)
    return {
      about: 'back',
      reason: 'This stock is used up by the front: choose no cut on the back, or thicker stock.',
    };
  return { front, back: spare - front };
}

/** The job as its file would say it. */
function writeNewJob(ask: NewJob, depths: Depths): Data {
  const { groove, swellGap, units } = ask;
  const usual = USUAL[units];
  const write = (mm: number) => writeLength(mm, units, units);
  const land = groove.depth - swellGap + usual.spareLand;
  const cut = (name: string, side: 'front' | 'back', shape: StartShape, depth: number, reach: number) => ({
    name,
    side,
    profile: drawProfile(shape, { reach, depth, land }, side === 'front' ? usual.step : 0, usual.grain, write),
    run: side === 'front' ? 'under' : 'over',
  });
  return {
    fielded: 1,
    title: ask.title,
    units,
    panel: { thickness: write(ask.stock) },
    frame: {
      thickness: write(ask.frame),
      groove: { width: write(groove.width), depth: write(groove.depth), setback: write(groove.setback) },
      swellGap: write(swellGap),
    },
    cuts: [
      cut('raise', 'front', ask.front, depths.front, usual.reach),
      ...(ask.back === 'none' ? [] : [cut('back relief', 'back', ask.back, depths.back, usual.backReach)]),
    ],
  };
}

/** A profile of the depth wanted: reach and step as usual, the reach longer where the shape's own arc asks for it. */
function drawProfile(
  shape: StartShape,
  { reach: least, depth, land }: { readonly reach: number; readonly depth: number; readonly land: number },
  step: number,
  grain: number,
  write: (mm: number) => Data,
): Data {
  if (shape === 'rebate') return { shape, reach: write(Math.max(least, land)), depth: write(depth) };
  const shoulder = depth > 3 * step ? step : 0;
  // A round may not rise more than it runs.
  const run = shape === 'bevel' ? 3 : depth - shoulder;
  const reach = Math.max(least, Math.ceil((land + run) / grain - 1e-9) * grain);
  return {
    shape,
    reach: write(reach),
    depth: write(depth),
    land: write(land),
    ...(shoulder > 0 && { shoulder: write(shoulder) }),
  };
}
