import type { Cut, Head, Job, KnifeReport, NamedProfile } from '@fielded/core';
import { DEFAULTS } from '../../packages/core/src/job/defaults.ts';
import { depthBelowFace } from './scan-line.ts';

/** Lengths agree where they are within this, mm. */
const SAME = 1e-6;
/** Places of a profile that are looked at, before the best of them is looked at closer. */
const PLACES = 800;
const TURNS = 60;

/** A place of a profile as set: `a` in from the edge and `b` below the face of the stock as planned, mm. */
interface Place {
  readonly a: number;
  readonly b: number;
}

/** A profile as it is set, from the definition of its shape: where it begins, how deep it is, and where it ends in an upright. */
interface SetShape {
  readonly from: number;
  readonly reach: number;
  readonly depth: number;
  readonly top: number;
  readonly at: (a: number) => Place;
}

/**
 * What of a knife's extents is not as its setting and its head ask (formulas K1 and K10): least radius, length on the steel, width
 * with the overrun. From the shapes' definitions, sines and square roots alone, whatever the panel's tilt and the head's shear.
 */
export function steelFaults(job: Job, cut: Cut, head: Head, knife: KnifeReport): string[] {
  const shape = setShape(job, cut);
  const [cos, sin] = [Math.cos(cut.tilt), Math.sin(cut.tilt)];
  const reachOf = ({ a, b }: Place) => a * cos + b * sin;
  // Up the spindle: on edge the panel's edge lies on the table, else its face does and the spindle leans.
  const stationOf = ({ a, b }: Place) => (cut.tilt === Math.PI / 2 ? a : b * cos - a * sin);
  const along = (from: number, to: number, measure: (p: Place) => number) =>
    greatestOf((a) => measure(shape.at(a)), from, to);
  const radius = head.cuttingDiameter / 2;
  const tip = along(shape.from, shape.reach, reachOf);

  const faults: string[] = [];
  const expectNear = (what: string, is: number, should: number, within = SAME) => {
    if (!(Math.abs(is - should) <= within)) faults.push(`${cut.name}: ${what} is ${is}, should be ${should}`);
  };
  expectNear('least radius', knife.leastRadius, radius - tip.value);

  // A face that does not get in past the edge has no overrun, and what is ground is then the wood's own outline.
  if (knife.overrun.edge === 0) return faults;
  const { overrun } = DEFAULTS.rules;
  const deeper = deeperThanSet(job, cut);
  const corner = { a: Math.min(shape.from, -overrun), b: shape.depth };
  const top = { a: shape.reach, b: Math.min(shape.top, -deeper - overrun) };
  expectNear('width', knife.width, Math.abs(stationOf(corner) - stationOf(top)) / Math.cos(head.shear), 1e-4);

  // The tip is the deepest station of those that reach as far; positive shear makes deeper stations cut later.
  const tipStation = stationOf(shape.at(tip.at));
  const shear = cut.run === 'under' ? head.shear : -head.shear;
  const offset = radius * Math.sin(head.rake);
  const onSteel = (p: Place) => {
    const r = radius - tip.value + reachOf(p);
    const h = offset + (stationOf(p) - tipStation) * Math.tan(shear);
    return Math.sqrt(radius * radius - offset * offset) - Math.sqrt(Math.max(0, r * r - h * h));
  };
  const ts = inWood(shape, -deeper).map(({ from, to, at }) => ({
    most: greatestOf((x) => onSteel(at(x)), from, to).value,
    least: -greatestOf((x) => -onSteel(at(x)), from, to).value,
  }));
  const most = Math.max(...ts.map((t) => t.most));
  const least = Math.min(0, ...ts.map((t) => t.least));
  expectNear('length', knife.length, most - least, 1e-5);
  return faults;
}

/** How much deeper than set a cut comes out in the stock as measured, mm: over stock that is thicker. */
function deeperThanSet({ panel }: Job, cut: Cut): number {
  return cut.run === 'over' ? Math.max(0, panel.measured - panel.thickness) : 0;
}

function setShape(job: Job, cut: Cut): SetShape {
  const profile = cut.profile as NamedProfile;
  const planned: Job = { ...job, panel: { ...job.panel, measured: job.panel.thickness } };
  const from = cut.reach - profile.reach;
  return {
    from,
    reach: cut.reach,
    depth: cut.depth,
    top: cut.depth - profile.depth,
    at: (a) => ({ a, b: depthBelowFace(planned, cut, Math.min(a, cut.reach)) }),
  };
}

/** A part of a set shape, by the places along it. */
interface Part {
  readonly from: number;
  readonly to: number;
  readonly at: (x: number) => Place;
}

/** What of a set shape lies between the edge and a face at depth `face`: run out level to the one and upright to the other. */
function inWood(shape: SetShape, face: number): Part[] {
  const upright = { from: face, to: shape.at(shape.reach).b, at: (b: number) => ({ a: shape.reach, b }) };
  if (upright.to > face) return [{ ...shape, from: 0, to: shape.reach }, upright];
  let [inside, outside] = [0, shape.reach];
  for (let i = 0; i < TURNS; i++) {
    const middle = (inside + outside) / 2;
    if (shape.at(middle).b > face) inside = middle;
    else outside = middle;
  }
  return [{ ...shape, from: 0, to: inside }];
}

/** The greatest of a function along a line, and where, the last of equals: in even steps, then closer about the best of them. */
function greatestOf(f: (x: number) => number, from: number, to: number): { at: number; value: number } {
  const step = (to - from) / PLACES;
  let best = { at: from, value: f(from) };
  for (let i = 1; i <= PLACES; i++) {
    const value = f(from + i * step);
    if (value >= best.value) best = { at: from + i * step, value };
  }
  let [low, high] = [Math.max(from, best.at - step), Math.min(to, best.at + step)];
  for (let i = 0; i < TURNS; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (f(a) > f(b)) high = b;
    else low = a;
  }
  const at = (low + high) / 2;
  return f(at) >= best.value ? { at, value: f(at) } : best;
}
