import type { DoorReport } from '../door/door-report.ts';
import { hollowOf, roundOf } from '../door/shaped-head.ts';
import type { HeadReport } from '../door/shaped-head-report.ts';
import { rulesOf } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import type { EdgeCut } from '../joint/edge.ts';
import { endGapOf } from '../joint/frame.ts';
import { toDegrees } from '../measure/angle.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say.ts';
import type { SeasonReport } from '../season/seasons.ts';
import { headNamed } from '../shop/shop.ts';
import type { PreparedJob } from './prepared-job.ts';
import { roundUp } from './round-sizes.ts';

/** What stands against shaped heads: hollows tighter than a cutter's bearing, raises that run to a point; and the caution on curved work. */
export function findShapedHeadProblems({ job, edge }: PreparedJob, doors: readonly DoorReport[]): Problem[] {
  const raises = edge.cuts.filter(({ cut, faceEnd }) => cut.side === 'front' && faceEnd !== null);
  const found = doors.flatMap(({ name, head }, k) =>
    head === undefined ? [] : [{ name, shaped: head, at: `doors[${k}].head` }],
  );
  const problems = found.flatMap(({ name, shaped, at }) => [
    ...hollowProblems(job, name, shaped, at),
    ...pointProblems(raises, job, name, shaped, at),
    ...fieldProblems(raises, job, name, shaped, at),
    ...heldProblems(job, name, at),
    ...railProblems(job, name, shaped, at),
    ...cornerProblems(job, name, shaped, at),
  ]);
  const [first] = found;
  if (first === undefined) return [];
  const further = first.shaped.tears.map(({ cut, shoulder }) => told(`shoulder.${shoulder}`, { cut }));
  const caution = sayProblem('curved-work', first.at, { door: first.name }, job, {
    about: { door: first.name },
    further,
  });
  return [...problems, caution];
}

/** Each cut with a cutter head of the shop: its bearing has to follow the hollow of the panel's edge. */
function hollowProblems(job: Job, door: string, { panelEdge }: HeadReport, at: string): Problem[] {
  const edge = hollowOf(panelEdge);
  if (edge === null) return [];
  const insertion = job.frame.groove.depth - endGapOf(job.frame);
  return job.cuts.flatMap(({ name: cut, head, reach, tilt }) => {
    const found = headNamed(job.shop, head);
    if (head === undefined || found === undefined || tilt !== 0) return [];
    const bearing = found.cuttingDiameter / 2 - reach;
    if (edge >= bearing - 1e-9) return [];
    const least = bearing + insertion;
    if (edge === 0)
      return [
        sayProblem('head-too-hollow.corner', at, { door, cut, head, least }, job, { about: { door, cut, head } }),
      ];
    const figures = { door, cut, head, edge, bearing, least, diameter: 2 * (edge + reach) };
    return [sayProblem('head-too-hollow', at, figures, job, { about: { door, cut, head } })];
  });
}

/** The sticking runs on the rail's own edge, which is hollow where the panel is round. */
function railProblems({ frame, shop, ...voice }: Job, door: string, report: HeadReport, at: string): Problem[] {
  const { sticking, stickingHead: head } = frame;
  const { greatestGroover } = report;
  if (sticking === undefined || head === undefined || greatestGroover === null) return [];
  const found = headNamed(shop, head);
  if (found === undefined) return [];
  const bearing = found.cuttingDiameter / 2 - sticking.reach;
  const more = { about: { door, head } };
  if (greatestGroover === 0)
    return [sayProblem('head-rail-too-hollow.corner', at, { door, head, bearing }, voice, more)];
  const edge = greatestGroover / 2 - frame.groove.depth;
  if (edge >= bearing - 1e-9) return [];
  const figures = { door, head, edge, bearing, diameter: 2 * (edge + sticking.reach) };
  return [sayProblem('head-rail-too-hollow', at, figures, voice, more)];
}

/** No cutter leaves the groove deeper than it is round a corner of the rail, where the panel's corner goes in further than its edge. */
function cornerProblems(job: Job, door: string, { corner }: HeadReport, at: string): Problem[] {
  if (corner === undefined) return [];
  const { reach, into } = corner;
  const { groove } = job.frame;
  const gap = endGapOf(job.frame);
  const figures = { door, reach, depth: groove.depth, needed: reach + gap };
  const more = { about: { door } };
  if (reach <= groove.depth + 1e-9)
    return into === 'stile' ? [] : [sayProblem('head-corner-by-hand', at, figures, job, more)];
  const off = roundUp(reach - (groove.depth - gap), job.units);
  const key = into === 'stile' ? 'head-corner-past-groove.stile' : 'head-corner-past-groove';
  return [sayProblem(key, at, { ...figures, off }, job, more)];
}

/** The raise has to stay within the round of the panel's edge. */
function pointProblems(
  raises: readonly EdgeCut[],
  job: Job,
  door: string,
  { panelEdge }: HeadReport,
  at: string,
): Problem[] {
  const edge = roundOf(panelEdge);
  if (edge === null) return [];
  return raises.flatMap(({ cut: { name: cut }, faceEnd }) => {
    const reach = faceEnd ?? 0;
    if (edge > reach) return [];
    return [sayProblem('head-field-pointed', at, { door, cut, edge, reach }, job, { about: { door, cut } })];
  });
}

/** Beside a shaped head that springs low the raises meet, and no field is left. */
function fieldProblems(
  raises: readonly EdgeCut[],
  job: Job,
  door: string,
  { field, panelEdge }: HeadReport,
  at: string,
): Problem[] {
  const [front] = [...raises].sort((one, other) => (other.faceEnd ?? 0) - (one.faceEnd ?? 0));
  if (front === undefined || field !== null) return [];
  const reach = front.faceEnd ?? 0;
  const round = roundOf(panelEdge);
  if (round !== null && round <= reach) return [];
  const cut = front.cut.name;
  return [sayProblem('head-no-field', at, { door, cut, reach }, job, { about: { door, cut } })];
}

/** No bearing goes round a curve beside a spindle that is not square to the panel. */
function heldProblems(job: Job, door: string, at: string): Problem[] {
  return job.cuts.flatMap(({ name: cut, tilt }) =>
    tilt === 0
      ? []
      : [sayProblem('head-not-flat', at, { door, cut, held: toDegrees(tilt) }, job, { about: { door, cut } })],
  );
}

/**
 * What the seasons do beside a shaped head: where its edge leans by ψ, the panel moves sin ψ of what it moves at its sides, square to
 * the edge; damp takes up the gap there, dry air takes wood out of the groove.
 */
export function findShapedHeadSeasons(
  job: Job,
  doors: readonly DoorReport[],
  season: SeasonReport | undefined,
): Problem[] {
  if (season === undefined) return [];
  const free = endGapOf(job.frame);
  const least = rulesOf(job).leastEngagement;
  const grows = (season.dampest.insertion - season.made.insertion) / season.width;
  const shrinks = (season.made.insertion - season.driest.insertion) / season.width;
  return doors.flatMap(({ name: door, head, panel }, k) => {
    if (head === undefined) return [];
    const leaning = panel.width * Math.sin((head.lean * Math.PI) / 180);
    const at = `doors[${k}].head`;
    const more = { about: { door } };
    const problems: Problem[] = [];
    const moves = grows * leaning;
    if (moves > free) {
      const figures = { door, lean: head.lean, moves, gap: free, wanted: Math.ceil(moves * 10) / 10 };
      problems.push(sayProblem('head-bottoms-out', at, figures, job, more));
    }
    const made = job.frame.groove.depth - free;
    const left = made - shrinks * leaning;
    // The sides have as little: their own problem says so already.
    if (left < least && left < season.driest.insertion && made >= least) {
      const figures = { door, lean: head.lean, moves: shrinks * leaning, left: Math.max(0, left), least };
      problems.push(sayProblem('head-leaves-groove', at, figures, job, more));
    }
    return problems;
  });
}
