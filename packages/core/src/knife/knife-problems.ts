import { SAME_LENGTH } from '@fielded/geometry';
import { toDegrees } from '../measure/angle.ts';
import type { Units } from '../measure/length.ts';
import type { Language } from '../problem/language.ts';
import type { Problem, Said, Subject } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say.ts';
import type { Terms } from '../problem/terms.ts';
import type { Head, Machine, Rules } from '../shop/shop.ts';
import type { EdgeClearance } from './edge-clearance.ts';
import type { TightWall } from './tight-walls.ts';

/** Who and what a knife's problems are about; lengths mm. */
export interface KnifeSubject {
  /** What the knife is for, as it is called. */
  readonly name: string;
  readonly headName: string;
  readonly head: Head;
  readonly at: string;
  readonly units: Units;
  readonly terms?: Terms;
  readonly language?: Language;
}

/** The problem of a face that lies too far from the axis to cut the profile: nothing else can be computed then. */
export function reportUnreached(subject: KnifeSubject, least: number, greatestReach: number): Problem {
  const { head, headName } = subject;
  const radius = head.cuttingDiameter / 2;
  const [rake, off] = [toDegrees(head.rake), radius * Math.sin(head.rake)];
  const figures = { head: headName, cut: subject.name, least, rake, radius, off };
  const greatest = justUnder(greatestReach);
  return greatestReach > 0
    ? sayProblem('face-never-reaches.some', subject.at, { ...figures, greatest }, subject, aboutKnife(subject))
    : sayProblem('face-never-reaches.none', subject.at, figures, subject, aboutKnife(subject));
}

/** The last tenth of a millimetre below a limit that is itself not reached. */
function justUnder(length: number): number {
  return (Math.ceil(length * 10 - 1e-6) - 1) / 10;
}

/** The problem of a limiter that would have to cut nearer the axis than its face goes. */
export function reportLimiterUnreached(subject: KnifeSubject): Problem {
  const figures = { cut: subject.name, gap: subject.head.limiterGap, head: subject.headName };
  return sayProblem('limiter-never-reaches', subject.at, figures, subject, aboutKnife(subject));
}

/** What a knife may stand out beyond its limiter on a tool for hand feed, mm: EN 847-1 (read in a secondary source). */
const HAND_FEED_GAP = 1.1;

/** The problem of a limiter gap that is too large for hand feed. */
export function findGapProblems(subject: KnifeSubject): Problem[] {
  const { head, headName, at } = subject;
  if (head.feed !== 'hand' || head.limiterGap <= HAND_FEED_GAP) return [];
  return [sayProblem('limiter-gap', at, { head: headName, gap: head.limiterGap }, subject, aboutKnife(subject))];
}

/** What the panel would run into, the head's body or the spindle nut, and a knife that the head cannot hold. `leastRadius` is how near the axis the panel comes, mm. */
export function findRoomProblems(
  subject: KnifeSubject,
  leastRadius: number,
  axialLength: number,
  machines: Readonly<Record<string, Machine>>,
): Problem[] {
  const { head, headName, name, at } = subject;
  const about = aboutKnife(subject);
  const problems: Problem[] = [];
  const body = head.bodyDiameter / 2;
  if (leastRadius <= body + SAME_LENGTH)
    problems.push(
      sayProblem('edge-meets-body', at, { head: headName, cut: name, least: leastRadius, body }, subject, about),
    );
  for (const [machine, { nutDiameter }] of Object.entries(machines)) {
    const nut = nutDiameter / 2;
    if (leastRadius > nut + SAME_LENGTH) continue;
    const also = { about: { ...about.about, machine } };
    problems.push(sayProblem('edge-meets-nut', at, { machine, cut: name, least: leastRadius, nut }, subject, also));
  }
  if (axialLength > head.height + SAME_LENGTH) {
    const figures = { cut: name, width: axialLength, head: headName, height: head.height };
    problems.push(sayProblem('knife-wider-than-head', at, figures, subject, about));
  }
  return problems;
}

/** What rubs behind the edge: too little clearance, undercut walls, a heel outside its circle. */
export function findRubbing(
  subject: KnifeSubject,
  edge: EdgeClearance,
  walls: readonly TightWall[],
  rules: Rules,
): Problem[] {
  const { name, head, at } = subject;
  const about = aboutKnife(subject);
  const problems: Problem[] = [];
  const wedge = toDegrees(head.wedge);
  const place = (p: { s: number; t: number }) => ({ back: p.t, along: p.s });
  const behind = { cut: name, clearance: toDegrees(edge.back.least), ...place(edge.back.at), wedge };
  if (edge.back.least <= 0) {
    problems.push(sayProblem('back-rubs', at, behind, subject, about));
  } else if (edge.back.least < rules.leastClearance - SAME_ANGLE) {
    const figures = { ...behind, least: toDegrees(rules.leastClearance) };
    problems.push(sayProblem('little-clearance', at, figures, subject, about));
  }
  if (edge.heel.least <= 0 && edge.back.least > 0) {
    const figures = { cut: name, thickness: head.knifeThickness, wedge, out: -edge.heel.least, ...place(edge.heel.at) };
    problems.push(sayProblem('heel-rubs', at, figures, subject, about));
  }
  const undercut = walls.filter((wall) => wall.undercut);
  if (undercut.length > 0) problems.push(reportUndercut(subject, undercut, rules));
  return problems;
}

/** Angles that differ by less, radians, are one. */
const SAME_ANGLE = 1e-9;

/** Steel that ends before the panel's edge or face at this setting: it leaves a lip if its outline was measured, else it may leave one. */
export function findLipProblems(
  subject: KnifeSubject,
  knife: string,
  lip: { readonly edge: number; readonly face: number },
  isSteel: boolean,
): Problem[] {
  const { name, at } = subject;
  const problems: Problem[] = [];
  for (const side of ['edge', 'face'] as const) {
    if (lip[side] < ROUNDED_LIP) continue;
    const figures = { knife, cut: name, lip: lip[side] };
    const about = { about: { ...aboutKnife(subject).about, knife } };
    problems.push(
      isSteel
        ? sayProblem(`steel-leaves-lip.${side}`, at, figures, subject, about)
        : sayProblem(`may-leave-lip.${side}`, at, figures, subject, about),
    );
  }
  return problems;
}

/** A lip of less than this, mm, is rounding. */
const ROUNDED_LIP = 1e-6;

/** Each undercut wall with its cure. Side relief does not help such a wall, since the sweep takes it away. */
function reportUndercut(subject: KnifeSubject, walls: readonly TightWall[], rules: Rules): Problem {
  const further = walls.flatMap(({ from, to, draft }): Said[] => {
    const corners = { a0: from.a, b0: from.b, a1: to.a, b1: to.b };
    const cure = draft === null ? [] : [told('rubs.slope', { draft: toDegrees(draft) })];
    return [told('rubs.undercut', corners), ...cure];
  });
  const figures = { cut: subject.name, least: toDegrees(rules.leastSideClearance) };
  return sayProblem('no-side-clearance', subject.at, figures, subject, { ...aboutKnife(subject), further });
}

function aboutKnife({ name, headName }: KnifeSubject): { readonly about: Subject } {
  return { about: { cut: name, head: headName } };
}
