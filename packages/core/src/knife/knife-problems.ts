import { formatLength, formatNumber } from '../measure/format.ts';
import type { Units } from '../measure/length.ts';
import type { Problem } from '../problem/problem.ts';
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
}

/** The face lies too far off the axis for the profile: nothing else can be computed. */
export function reportUnreached(subject: KnifeSubject, leastRadius: number, greatestReach: number): Problem {
  const { head, headName, units } = subject;
  const radius = head.cuttingDiameter / 2;
  const works =
    greatestReach > 0
      ? `The greatest reach that works is ${formatLength(justUnder(greatestReach), units)}`
      : 'No reach works at these stations';
  return error(
    subject,
    'face-never-reaches',
    `The face of the knives in the head "${headName}" never reaches in to a radius of ${formatLength(leastRadius, units)} for the ${subject.name}: ${degrees(head.rake)} of rake on a cutting radius of ${formatLength(radius, units)} sets it ${formatLength(radius * Math.sin(head.rake), units)} off the axis. ${works}: take less reach, less rake or a larger head.`,
  );
}

/** The next whole tenth of a millimetre below: the limit itself is not reached. */
function justUnder(length: number): number {
  return (Math.ceil(length * 10 - 1e-6) - 1) / 10;
}

/** The limiter would have to reach further in than its face goes. */
export function reportLimiterUnreached(subject: KnifeSubject): Problem {
  return warning(
    subject,
    'limiter-never-reaches',
    `No limiter can be drawn for the ${subject.name}: set back ${formatLength(subject.head.limiterGap, subject.units)} it would lie nearer the axis than the face of the head "${subject.headName}". Take less reach, less rake or a larger head.`,
  );
}

/** What a knife may stand out beyond its limiter on a tool for hand feed, mm: EN 847-1 (read in a secondary source). */
const HAND_FEED_GAP = 1.1;

/** A limiter gap that hand feed does not allow. */
export function findGapProblems({ head, headName, at, units }: KnifeSubject): Problem[] {
  if (head.feed !== 'hand' || head.limiterGap <= HAND_FEED_GAP) return [];
  const gap = formatLength(head.limiterGap, units);
  const message = `The knives of the head "${headName}" stand ${gap} out beyond their limiters, and it is for hand feed: EN 847-1 allows 1.1 mm there. Fit limiters that come closer; only a tool marked MEC, with a power feed, may have more. The mark on the tool and your local rules go before this.`;
  return [{ severity: 'error', code: 'limiter-gap', at, message }];
}

/** What the panel runs into: the head's body, the spindle nut; and a knife the head cannot hold. `leastRadius` is how near the axis the panel comes. */
export function findRoomProblems(
  subject: KnifeSubject,
  leastRadius: number,
  axialLength: number,
  machines: Readonly<Record<string, Machine>>,
): Problem[] {
  const { head, headName, name } = subject;
  const say = (mm: number) => formatLength(mm, subject.units);
  const problems: Problem[] = [];
  if (leastRadius <= head.bodyDiameter / 2) {
    problems.push(
      error(
        subject,
        'edge-meets-body',
        `The panel meets the body of the head "${headName}" at the ${name}: it passes ${say(leastRadius)} from the axis, and the body stands out to ${say(head.bodyDiameter / 2)}. Take less reach, or a head with a larger cutting circle or a smaller body.`,
      ),
    );
  }
  for (const [machine, { nutDiameter }] of Object.entries(machines)) {
    if (leastRadius > nutDiameter / 2) continue;
    problems.push(
      warning(
        subject,
        'edge-meets-nut',
        `On the machine "${machine}" the panel meets the spindle nut at the ${name}: it passes ${say(leastRadius)} from the axis, and the nut stands out to ${say(nutDiameter / 2)}. Use another machine, or sink the nut.`,
      ),
    );
  }
  if (axialLength > head.height) {
    problems.push(
      error(
        subject,
        'knife-wider-than-head',
        `The knife for the ${name} takes ${say(axialLength)} along the spindle, and the head "${headName}" is ${say(head.height)} high. Take a higher head, or cut the profile in two.`,
      ),
    );
  }
  return problems;
}

/** What rubs behind the edge: too little clearance, walls that stand too square, a heel outside its circle. */
export function findRubbing(
  subject: KnifeSubject,
  edge: EdgeClearance,
  walls: readonly TightWall[],
  rules: Rules,
): Problem[] {
  const { name, head } = subject;
  const say = (mm: number) => formatLength(mm, subject.units);
  const problems: Problem[] = [];
  const where = (p: { s: number; t: number }) => `${say(p.t)} back from the tip line, ${say(p.s)} along it`;
  if (edge.back.least <= 0) {
    problems.push(
      error(
        subject,
        'back-rubs',
        `The back of the knife for the ${name} rubs: its clearance falls to ${degrees(edge.back.least)} at ${where(edge.back.at)}. Grind a slimmer wedge than ${degrees(head.wedge)}, or take less rake or less reach.`,
      ),
    );
  } else if (edge.back.least < rules.leastClearance) {
    problems.push(
      warning(
        subject,
        'little-clearance',
        `The knife for the ${name} has little clearance: ${degrees(edge.back.least)} at ${where(edge.back.at)}, under the shop's least of ${degrees(rules.leastClearance)}. Grind a slimmer wedge than ${degrees(head.wedge)}, or take less rake or less reach.`,
      ),
    );
  }
  if (edge.heel.least <= 0 && edge.back.least > 0) {
    problems.push(
      warning(
        subject,
        'heel-rubs',
        `The heel of the knife for the ${name} rubs: steel ${say(head.knifeThickness)} thick with a wedge of ${degrees(head.wedge)} stands ${say(-edge.heel.least)} outside its own cutting circle at ${where(edge.heel.at)}. Relieve the heel, or use thinner steel.`,
      ),
    );
  }
  if (walls.length > 0) problems.push(warning(subject, 'no-side-clearance', describeWalls(subject, walls, rules)));
  return problems;
}

/** Straight and undercut walls one by one with their cure; curves, which every hollow and round has, together. */
function describeWalls({ name, units }: KnifeSubject, walls: readonly TightWall[], rules: Rules): string {
  const say = (mm: number) => formatLength(mm, units);
  const least = degrees(rules.leastSideClearance);
  const named = walls.filter((wall) => wall.straight || wall.undercut);
  const list = named.map(({ from, to, straight, sideClearance, undercut, draft }) => {
    const has = undercut ? 'undercut, the sweep takes it away' : degrees(sideClearance);
    const cure = draft === null ? `no draft gives ${least}` : `${degrees(draft)} of draft gives ${least}`;
    return `on the ${straight ? 'wall' : 'curve'} ${placeOf(from, to, say)} (${has}; ${cure})`;
  });
  if (named.length < walls.length) list.push('where its curves run square to the spindle');
  const cure =
    named.length > 0
      ? 'Give straight walls that draft, or have side relief ground there'
      : 'Have side relief ground there';
  const listed = list.length > 1 ? `${list.slice(0, -1).join(', ')} and ${list.at(-1)}` : list.join();
  return `The knife for the ${name} has less side clearance than the shop's ${least} and rubs ${listed}. ${cure}.`;
}

function placeOf(from: TightWall['from'], to: TightWall['to'], say: (mm: number) => string): string {
  const [a, b] = [say(from.a), say(from.b)];
  const [a1, b1] = [say(to.a), say(to.b)];
  if (b === b1) return `from ${a} to ${a1} from the edge, ${b} below the face`;
  if (a === a1) return `from ${b} to ${b1} below the face, ${a} from the edge`;
  return `from ${a} from the edge and ${b} below the face to ${a1} and ${b1}`;
}

function error(subject: KnifeSubject, code: string, message: string): Problem {
  return { severity: 'error', code, at: subject.at, message };
}

function warning(subject: KnifeSubject, code: string, message: string): Problem {
  return { severity: 'warning', code, at: subject.at, message };
}

function degrees(angle: number): string {
  return `${formatNumber((angle * 180) / Math.PI, 1)}°`;
}
