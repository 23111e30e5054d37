import type { Cut, Job, Report } from '@fielded/core';
import type { Random } from '../support/random.ts';
import { depthBelowFace, type PlacedCut, type Stock } from './scan-line.ts';

/** A wood that swells by round figures, and the width of the panels made of it, mm. */
export const WOOD = { name: 'test wood', tangential: 0.003, radial: 0.002 };
export const WIDTH = 350;

/** What a joint is off by, in the order of its sources: mm, moisture in points of %, square in radians. */
interface Off {
  thickness: number;
  moisture: number;
  panelSize: number;
  grooveDepth: number;
  grooveWidth: number;
  film: number;
  setback: number;
  cuts: { height: number; fence: number; square: number }[];
}

interface Figures {
  readonly clearance: number;
  readonly frontMost: number;
  readonly frontLeast: number;
  readonly bottomGap: number;
}

const NAMES = ['clearance', 'frontMost', 'frontLeast', 'bottomGap'] as const;

/** Joints made at random for each job, many of them at the very ends; and places of a tongue that leans that are looked at. */
const JOINTS = 150;
/** Of those, joints with every size at an end of its ±: a step that only all of them together reach is found from there. */
const CORNERS = 60;
const PLACES = 40;
/** Joints that are climbed from, and how often several sizes are moved together at each step. */
const STARTS = 6;
const TOGETHER = 20;
/** Within this a joint may lie outside the worst case, and the worst case, where it is a bound, outside all joints found, mm. */
const SAME = 1e-6;
const NEAR = 2e-3;

/**
 * What is wrong with a job's worst cases. No joint inside the limits lies outside them: joints at random, worked out from the shapes'
 * definitions and the swelling of the wood. And each is one that can be: a climb from the best of those joints gets there.
 */
export function worstFaults(job: Job, { spread, fit }: Pick<Report, 'spread' | 'fit'>, random: Random): string[] {
  if (spread === undefined || fit.verdict === null) return [];
  const worst: Record<keyof Figures, readonly [number, number]> = {
    clearance: spread.clearance.worst,
    frontMost: spread.frontFace.most.worst,
    frontLeast: spread.frontFace.least.worst,
    bottomGap: spread.bottomGap.worst,
  };
  const made = Array.from({ length: JOINTS }, (_, n) => {
    const off = drawJoint(job, random, n < CORNERS);
    return { off, figures: measureOff(job, off) };
  });
  for (const name of NAMES) {
    const [least, most] = worst[name];
    const beyond = made.find(({ figures }) => figures[name] < least - SAME || figures[name] > most + SAME);
    if (beyond)
      return [`${name} can be ${beyond.figures[name]}, not ${least} to ${most}: ${JSON.stringify(beyond.off)}`];
  }
  const known = {
    clearance: spread.clearance.worstBy,
    frontMost: spread.frontFace.most.worstBy,
    frontLeast: spread.frontFace.least.worstBy,
    bottomGap: spread.bottomGap.worstBy,
  };
  const name = random.oneOf(NAMES);
  const way = random.oneOf([-1, 1] as const);
  const end = way < 0 ? 0 : 1;
  // A bound need not be reached.
  return known[name][end] === 'proof' ? climbFaults(job, made, name, way, worst[name][end], random) : [];
}

/** One of a job's worst cases, the least (`way` -1) or the most of one figure, climbed to from the best joints that were made. */
function climbFaults(
  job: Job,
  made: readonly { off: Off; figures: Figures }[],
  name: keyof Figures,
  way: -1 | 1,
  worst: number,
  random: Random,
): string[] {
  const said = way * worst;
  const read = (off: Off) => way * measureOff(job, off)[name];
  const starts = made.toSorted((a, b) => way * (b.figures[name] - a.figures[name])).slice(0, STARTS);
  let found = Number.NEGATIVE_INFINITY;
  for (const { off } of starts) if (found < said - SAME) found = Math.max(found, climb(job, off, read, random));
  return found > said + SAME || found < said - NEAR
    ? [`${way < 0 ? 'least' : 'most'} ${name} is said to be ${way * said}, a climb finds ${way * found}`]
    : [];
}

function drawJoint({ cuts, spread }: Job, random: Random, corner: boolean): Off {
  const drawn = (most = 0) =>
    corner || random.unit() < 0.6 ? random.oneOf([-most, most]) : random.between(-most, most);
  const limits = spread!;
  return {
    thickness: drawn(limits.thickness),
    moisture: drawn(limits.moisture),
    panelSize: drawn(limits.panelSize),
    grooveDepth: drawn(limits.grooveDepth),
    grooveWidth: drawn(limits.grooveWidth),
    film: drawn(limits.film),
    setback: drawn(limits.setback),
    cuts: cuts.map(() => ({
      height: drawn(limits.height),
      fence: drawn(limits.fence),
      square: drawn(limits.square),
    })),
  };
}

/**
 * From one joint to better ones, in steps that halve: each of its sizes alone (Hooke and Jeeves 1961), then a few of them together, since a
 * step of the profile that stands just where the tongue ends is followed by no size alone.
 */
function climb({ spread }: Job, from: Off, read: (off: Off) => number, random: Random): number {
  const off = structuredClone(from);
  const dials = listDials(off, spread!);
  let value = read(off);
  const tryMove = (moves: readonly { dial: Dial; by: number }[]) => {
    const before = moves.map(({ dial: { at, key } }) => at[key]!);
    for (const { dial, by } of moves)
      dial.at[dial.key] = Math.max(-dial.most, Math.min(dial.most, dial.at[dial.key]! + by * dial.most));
    const tried = read(off);
    if (tried > value + 1e-12) {
      value = tried;
      return true;
    }
    moves.forEach(({ dial: { at, key } }, i) => {
      at[key] = before[i]!;
    });
    return false;
  };
  for (let part = 2; part > 1e-6 && dials.length > 0; part /= 2) {
    for (let gained = true; gained; ) {
      gained = false;
      for (const dial of dials) for (const by of [-part, part]) if (tryMove([{ dial, by }])) gained = true;
      for (let i = 0; i < TOGETHER; i++) {
        const moves = [0, 1, 2].map(() => ({ dial: random.oneOf(dials), by: random.between(-part, part) }));
        if (tryMove(moves)) gained = true;
      }
    }
  }
  return value;
}

/** One size of a joint that may be off, and by how much at most. */
interface Dial {
  readonly at: Record<string, number>;
  readonly key: string;
  readonly most: number;
}

function listDials(off: Off, limits: NonNullable<Job['spread']>): Dial[] {
  const { cuts, ...whole } = off;
  const dials = [
    ...(Object.keys(whole) as (keyof typeof whole)[]).map((key) => ({ at: off as never, key, most: limits[key] ?? 0 })),
    ...cuts.flatMap((cut) =>
      (['height', 'fence', 'square'] as const).map((key) => ({ at: cut as never, key, most: limits[key] ?? 0 })),
    ),
  ];
  return dials.filter(({ most }) => most > 0);
}

/** The figures of a joint that is off, from its shapes' definitions and the swelling of its wood. */
function measureOff(job: Job, off: Off): Figures {
  const { groove, swellGap } = job.frame;
  const bottom = groove.depth + off.grooveDepth;
  const meant = groove.depth - swellGap + off.panelSize / 2 + (WIDTH * WOOD.tangential * off.moisture) / 2;
  const into = Math.max(0, Math.min(meant, bottom)) / (1 + WOOD.tangential * off.moisture);
  const { thickness, measured } = job.panel;
  const moved: MovedSection = {
    panel: { thickness, measured: measured + off.thickness },
    cuts: job.cuts.map((cut, k) => moveCut(cut, off.cuts[k]!)),
  };
  const [front, back] = [leastDepth(moved, 'front', into), leastDepth(moved, 'back', into)];
  const swell = 1 + WOOD.radial * off.moisture;
  const coat = Math.max(0, (job.panel.film ?? 0) + off.film);
  const tongue = swell * (moved.panel.measured - front - back) + 2 * coat;
  const clearance = (groove.width + off.grooveWidth) * swell - tongue;
  const frontMost = swell * front - coat - groove.setback - off.setback;
  return { clearance, frontMost, frontLeast: frontMost - clearance, bottomGap: bottom - meant };
}

/** A cut with its spindle and its fence moved; the head's axis leans by the tilt. */
function moveCut(
  { profile, side, run, tilt, depth, reach }: Cut,
  { height, fence, square }: Off['cuts'][number],
): MovedCut {
  const cos = Math.cos(tilt);
  const sin = Math.sin(tilt);
  const cut = { profile, run, depth: depth + height * cos + fence * sin, reach: reach + fence * cos - height * sin };
  return { side, cut, lean: Math.tan(square) };
}

/** What a joint that is off is measured by: no more than that, since a whole job is not copied a million times. */
interface MovedSection {
  readonly panel: Stock['panel'];
  readonly cuts: readonly MovedCut[];
}

interface MovedCut {
  readonly side: Cut['side'];
  readonly cut: PlacedCut;
  readonly lean: number;
}

/** How deep a side stays below its face, from the tip to `into`: at the mouth, since named shapes only rise, unless one leans. */
function leastDepth(moved: MovedSection, side: Cut['side'], into: number): number {
  const mine = moved.cuts.filter((each) => each.side === side);
  // A loop, since it is asked a million times.
  const at = (x: number) => {
    let deepest = 0;
    for (const { cut, lean } of mine) deepest = Math.max(deepest, depthBelowFace(moved, cut, x) - x * lean);
    return deepest;
  };
  // A hair short of the mouth, so that a step which stands there is not climbed.
  const mouth = into - 1e-9;
  if (mine.every(({ lean }) => lean === 0)) return at(mouth);
  const step = mouth / PLACES;
  const depths = Array.from({ length: PLACES + 1 }, (_, i) => at(i * step));
  let least = Number.POSITIVE_INFINITY;
  depths.forEach((depth, i) => {
    least = Math.min(least, depth);
    // Closer about every place that is no deeper than its neighbours.
    if (depth > (depths[i - 1] ?? depth) || depth > (depths[i + 1] ?? depth)) return;
    let [low, high] = [Math.max(0, i - 1) * step, Math.min(PLACES, i + 1) * step];
    for (let turn = 0; turn < 40; turn++) {
      const [p, q] = [low + (high - low) / 3, high - (high - low) / 3];
      if (at(p) < at(q)) high = q;
      else low = p;
    }
    least = Math.min(least, at(low), at(high));
  });
  return least;
}
