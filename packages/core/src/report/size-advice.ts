import { smallestPanel } from '../door/door.ts';
import { rulesOf } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { designInsertion } from '../joint/fit.ts';
import type { TongueReport } from '../joint/fit-report.ts';
import type { Advice, Problem } from '../problem/problem.ts';
import { advise } from '../problem/say.ts';
import type { SeasonReport } from '../season/seasons.ts';
import { backFirst } from './advice-candidates.ts';
import { roundDown, roundSizes, roundUp } from './round-sizes.ts';

const DEPTH = ['frame', 'groove', 'depth'];
const WIDTH = ['frame', 'groove', 'width'];
const SETBACK = ['frame', 'groove', 'setback'];
const GAP = ['frame', 'swellGap'];

/** More room for a panel to swell into, `short` mm of it: from the tongue's depth, or from a deeper groove. */
export function roomToTry(job: Job, short: number): Advice[] {
  const { groove, swellGap } = job.frame;
  const gap = roundUp(swellGap + short, job.units);
  const depth = roundUp(groove.depth + gap - swellGap, job.units);
  const smaller = gap < groove.depth ? [advise('advice.swell-gap', { gap }, [{ path: GAP, mm: gap }], job)] : [];
  const both = [
    { path: DEPTH, mm: depth },
    { path: GAP, mm: gap },
  ];
  return [...smaller, advise('advice.groove-and-gap', { depth, gap }, both, job)];
}

/** More of the tongue in the groove, `short` mm of it: a deeper groove, or less gap. */
export function engagementToTry(job: Job, insertion: number): Advice[] {
  const { groove, swellGap } = job.frame;
  const short = rulesOf(job).leastEngagement - insertion;
  const depth = roundUp(groove.depth + short, job.units);
  const gap = roundDown(swellGap - short, job.units);
  const deeper = advise('advice.groove-depth', { depth }, [{ path: DEPTH, mm: depth }], job);
  return gap > 0 ? [deeper, advise('advice.swell-gap', { gap }, [{ path: GAP, mm: gap }], job)] : [deeper];
}

/** A thicker tongue in a wider groove: no other way leaves the fit as it is. */
export function thickerTonguesToTry(job: Job, { thicknessAtTip }: TongueReport): Advice[] {
  const least = rulesOf(job).leastTongue;
  const by = roundUp(least - (thicknessAtTip ?? least), job.units);
  const width = job.frame.groove.width + by;
  return job.cuts.flatMap((cut, k) => {
    const depth = cut.depth - by;
    if (depth <= 0) return [];
    const writes = [
      { path: ['cuts', k, 'depth'], mm: depth },
      { path: WIDTH, mm: width },
    ];
    return [advise('advice.thicker-tongue', { cut: cut.name, by, width }, writes, job)];
  });
}

/** Setbacks that leave lips of `least` mm on both sides of the groove, or clear the sticking by that. */
export function setbacksToTry(job: Job, least: number): Advice[] {
  const { thickness, groove, sticking } = job.frame;
  const front = roundUp(Math.max(least, sticking === undefined ? 0 : sticking.depth + 1), job.units);
  const back = roundDown(thickness - groove.width - least, job.units);
  return [front, back].flatMap((setback) => {
    if (setback < front || setback > back || setback === groove.setback) return [];
    return [advise('advice.setback', { setback }, [{ path: SETBACK, mm: setback }], job)];
  });
}

/** A sticking that ends before the groove. */
export function stickingsToTry(job: Job): Advice[] {
  const { groove, sticking } = job.frame;
  if (sticking === undefined || sticking.shape === 'outline') return [];
  const depth = roundDown(groove.setback - 1, job.units);
  if (depth <= sticking.shoulder) return [];
  return [advise('advice.sticking', { depth }, [{ path: ['frame', 'sticking', 'depth'], mm: depth }], job)];
}

/** A stub tenon that ends at the bottom of the groove. */
export function copesToTry(job: Job): Advice[] {
  const length = job.frame.groove.depth;
  return [advise('advice.cope-length', { length }, [{ path: ['frame', 'joint', 'length'], mm: length }], job)];
}

/** A mortise for the part of it that is longer than the groove is deep. */
export function tenonsToTry(job: Job): Advice[] {
  return [advise('advice.tenon', {}, [{ path: ['frame', 'joint', 'kind'], word: 'tenon' }], job)];
}

/** A field of this, mm, still reads as one between two raises. */
const LEAST_FIELD = 20;

/** Less reach, so that some field is left on the panel a problem speaks of: with another profile, or from the fence alone. */
export function shorterReachesToTry(job: Job, { about, figures }: Problem): Advice[] {
  const door = job.doors.find(({ name }) => name === about?.door);
  const panel = door && smallestPanel(job, door);
  const least = panel ? Math.min(panel.width, panel.height) : Number(figures?.width);
  const reach = roundDown((least - LEAST_FIELD) / 2, job.units);
  const wide = job.cuts.flatMap((cut, k) => (cut.side === 'front' && cut.reach > reach ? [k] : []));
  const [k] = wide;
  if (k === undefined || wide.length > 1 || reach <= 0) return [];
  return [...narrowerProfile(job, k, reach), ...reachAlone(job, k, reach)];
}

/** The same profile drawn with less reach, its land kept. */
function narrowerProfile(job: Job, k: number, reach: number): Advice[] {
  const { name, profile, knife } = job.cuts[k]!;
  if (knife !== undefined || profile.shape === 'outline') return [];
  const run = reach - profile.land;
  const curved = profile.shape !== 'rebate' && profile.shape !== 'bevel';
  if (run <= 0 || (curved && profile.depth - profile.shoulder > run)) return [];
  const at = ['cuts', k];
  const writes = [
    [...at, 'profile', 'reach'],
    [...at, 'reach'],
  ].map((path) => ({ path, mm: reach }));
  return [advise('advice.profile-reach', { cut: name, reach }, writes, job)];
}

/** A raise that shows this much, mm, past the frame is seen as one. */
const SEEN = 20;

/** Reaches that carry a front cut out of the groove into sight. */
export function longerReachesToTry(job: Job): Advice[] {
  const reach = roundUp(designInsertion(job.frame) + SEEN, job.units);
  return job.cuts.flatMap((cut, k) => (cut.side === 'front' ? reachAlone(job, k, reach) : []));
}

/** Less reach by what the panel's edge lacks to clear a body or a nut of that radius, mm. */
export function clearingReachesToTry(job: Job, { about, figures }: Problem): Advice[] {
  const k = job.cuts.findIndex(({ name }) => name === about?.cut);
  const within = Number(figures?.body ?? figures?.nut) - Number(figures?.least);
  if (k < 0 || !(within >= 0)) return [];
  const reach = roundDown(job.cuts[k]!.reach - within - 1, job.units);
  return reach > 0 ? reachAlone(job, k, reach) : [];
}

/** More clearance when the panel is made, by what it lacks once it has swollen, mm; from each cut in turn, back cuts first. */
export function looserToTry(job: Job, lacks: number): Advice[] {
  return backFirst(job).flatMap((k) => {
    const { name, depth } = job.cuts[k]!;
    return roundSizes(depth + roundUp(lacks, 'mm'), job.units).map((mm) =>
      advise('advice.deeper', { cut: name, by: mm - depth }, [{ path: ['cuts', k, 'depth'], mm }], job),
    );
  });
}

/** Cuts so deep that a tongue that is tight as made slides at every season. */
export function looserInDampToTry(job: Job, season: SeasonReport | undefined): readonly Advice[] {
  const least = Math.min(...[season?.driest, season?.dampest].map((state) => state?.clearance ?? job.fit.snug));
  return least < job.fit.snug ? looserToTry(job, job.fit.snug - least) : [];
}

function reachAlone(job: Job, k: number, reach: number): Advice[] {
  return [advise('advice.reach', { cut: job.cuts[k]!.name, reach }, [{ path: ['cuts', k, 'reach'], mm: reach }], job)];
}
