import { depthPath } from '@fielded/geometry';
import { acceptJob } from '../job/given-job.ts';
import type { Job } from '../job/job.ts';
import type { Verdict } from '../joint/fit-report.ts';
import { type Depths, depthsOf, leastDeviation } from '../knife/match-profiles.ts';
import type { Cut } from '../machining/cut.ts';
import { sweepCut } from '../machining/sweep.ts';
import type { Code } from '../problem/codes.ts';
import type { Problem, Said } from '../problem/problem.ts';
import { headNamed } from '../shop/shop.ts';
import { answerDoors } from './doors.ts';
import { judgeJob } from './join.ts';
import { steelFault, woodOf } from './knife-orders.ts';
import { answerKnives } from './knives.ts';
import { answerPlan } from './plan.ts';
import { prepareReadJob } from './prepared-job.ts';

/** A knife of the shop for a cut of a job: where it is set, how far off it comes out, and whether it can be run. Lengths mm. */
export interface KnifeMatch {
  readonly knife: string;
  readonly head: string | null;
  /** The reach, at the cut's own depth, that leaves the least greatest deviation. */
  readonly reach: number;
  /** Greatest difference in depth from the wanted section, at any distance from the panel's edge. */
  readonly deviation: number;
  /** What the joint's verdict becomes with it; null where no tongue is left. */
  readonly fit: Verdict | null;
  /** Whether nothing that is known of its head and the shop's machines stands against it. */
  readonly works: boolean;
  readonly against: readonly Code[];
  /** What stands against it in words, with its figures; `against` names the same by their codes. */
  readonly problems: readonly Problem[];
  /** What of the knife's own profile is used, from the edge and from the face, cut coordinates of the knife as drawn. */
  readonly uses: { readonly from: number; readonly to: number };
  /** Edge of what it sweeps there, SVG path data: x in from the edge, y down from the worked face. */
  readonly swept: string;
}

/** Knives whose running is worked out, best first; the rest say nothing of it unless the knife itself is at fault. */
const MATCHES_RUN = 5;

/**
 * Every knife of the shop that could make a cut, best first (formula M1): at the cut's depth, each at the reach that leaves the least
 * greatest |Δb| over all a ≥ 0 between the section that is wanted and the one the knife leaves.
 *
 * `cutName` is the cut's own name. Knives that were measured off the steel and name no head, or none that takes them, are left
 * out: what they cut is not known. Empty without a shop. Throws RangeError where there is no such cut.
 */
export function matchKnives(job: Job, cutName: string, mostRun: number = MATCHES_RUN): KnifeMatch[] {
  const index = job.cuts.findIndex(({ name }) => name === cutName);
  const cut = job.cuts[index];
  if (cut === undefined) throw new RangeError(`there is no cut ${cutName}`);
  const { shop } = job;
  if (shop === undefined) return [];
  const wanted = depthsOf(sweepCut(cut, cut.depth).swept);
  const found = Object.keys(shop.knives).flatMap((name) => {
    const candidate = candidateOf(job, cut, name);
    if (candidate === null) return [];
    const { reach, deviation } = leastDeviation(wanted, candidate.depths);
    return [{ ...candidate, name, reach, deviation }];
  });
  found.sort((p, q) => p.deviation - q.deviation || (p.name < q.name ? -1 : 1));
  // Checked once: a knife changes none of what is asked of a job.
  const whole = found.length > 0 ? acceptJob(job) : job;
  return found.map(({ name, tried, reach, deviation }, place) => {
    const set: Cut = { ...tried, reach };
    const cuts = whole.cuts.map((each, i) => (i === index ? set : each));
    return describe({ ...whole, cuts }, index, name, deviation, place < mostRun);
  });
}

/** The cut made with a knife of the shop, at the knife's own reach; null where what it cuts is not known or it is not as deep. */
function candidateOf(job: Job, cut: Cut, name: string): { tried: Cut; depths: Depths } | null {
  const shop = job.shop!;
  const knife = shop.knives[name]!;
  const head = headNamed(shop, knife.head);
  if (knife.measured === 'knife' && (head === undefined || steelFault(shop, name, knife, head))) return null;
  const profile = head === undefined ? knife.profile : woodOf(knife, head, cut.tilt);
  const { head: _, ...bare } = cut;
  const tried: Cut = {
    ...bare,
    profile,
    reach: profile.reach,
    knife: name,
    ...(knife.head !== undefined && { head: knife.head }),
  };
  return { tried, depths: depthsOf(sweepCut(tried, cut.depth).swept) };
}

/** Steel that ends short at this setting: the section would not come out as compared. */
const LIPS: ReadonlySet<string> = new Set(['steel-leaves-lip', 'may-leave-lip']);

function describe(job: Job, index: number, knife: string, deviation: number, run: boolean): KnifeMatch {
  const cut = job.cuts[index]!;
  const { reach, profile } = cut;
  const against = run ? findAgainstKnife(job, index, knife) : [];
  return {
    knife,
    head: cut.head ?? null,
    reach,
    deviation,
    fit: judgeJob(job),
    works: run && against.length === 0 && cut.head !== undefined,
    against: [...new Set(against.map(({ code }) => code))],
    // Drop `cannot-be-run`: it repeats the problems of the nearest way.
    problems: against.filter(
      ({ further = [] }) => !further.some((part) => against.some((each) => saysSame(part, each))),
    ),
    uses: { from: Math.max(0, profile.reach - reach), to: profile.reach },
    swept: sweptOutline(cut),
  };
}

/** Everything that stands against a cut with a knife of the shop: of the knife, and of the ways to run it; each said once. */
function findAgainstKnife(job: Job, index: number, knife: string): Problem[] {
  const at = `cuts[${index}]`;
  const prepared = prepareReadJob(job);
  const made = answerKnives(prepared, knife)?.problems ?? [];
  const planned = answerPlan(prepared, answerDoors(prepared), 'own heads')?.problems ?? [];
  const against: Problem[] = [];
  for (const problem of [...made, ...planned]) {
    const stands = problem.severity === 'error' || LIPS.has(problem.code);
    if (stands && problem.at.startsWith(at) && !against.some((other) => saysSame(other, problem)))
      against.push(problem);
  }
  return against;
}

/** Whether two problems, or a part of one and another, are one sentence with the same figures. */
function saysSame(one: Partial<Said>, other: Partial<Said>): boolean {
  return one.sentence === other.sentence && JSON.stringify(one.figures) === JSON.stringify(other.figures);
}

/** Edge of what a cut sweeps at its own depth and reach, SVG path data: x in from the edge, y down from the worked face. */
export function sweptOutline(cut: Cut): string {
  return depthPath(sweepCut(cut, cut.depth).swept);
}
