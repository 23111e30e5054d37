import type { Chain, Curve } from '../geometry/curve.ts';
import { heightAt } from '../geometry/piece.ts';
import { SAME_LENGTH } from '../tolerance.ts';
import type { Boundary, Section } from './section.ts';

/** One end of a boundary of the wood. */
interface End {
  readonly boundary: Boundary;
  readonly x: number;
  readonly y: number;
  readonly isRight: boolean;
  /** The end it meets by an upright step, often of no height. */
  partner: End | undefined;
  /** The other end of the same boundary. */
  opposite: End | undefined;
}

/**
 * The section's outline as closed chains, each run with the wood on its left (anticlockwise; holes clockwise).
 *
 * Every boundary of the wood ends where a strip ends; at one x the ends, sorted by height, belong together in pairs, since
 * wood lies between the first and the second of them on one side of that x only. So the outline always closes.
 */
export function traceOutline(section: Section): Chain[] {
  const ends = pairEnds(section);
  const loops: Chain[] = [];
  const used = new Set<Boundary>();
  for (const end of ends) {
    if (end.isRight || end.boundary.wood !== -1 || used.has(end.boundary)) continue;
    loops.push(traceLoop(end, used));
  }
  return loops;
}

function pairEnds({ boundaries }: Section): End[] {
  const ends: End[] = [];
  for (const boundary of boundaries) {
    if (boundary.wood === 0) continue;
    const { piece, x0, x1 } = boundary;
    const left: End = {
      boundary,
      x: x0,
      y: heightAt(piece, x0),
      isRight: false,
      partner: undefined,
      opposite: undefined,
    };
    const right: End = { boundary, x: x1, y: heightAt(piece, x1), isRight: true, partner: undefined, opposite: left };
    left.opposite = right;
    ends.push(left, right);
  }
  ends.sort((p, q) => p.x - q.x || p.y - q.y);
  for (let i = 0; i + 1 < ends.length; i += 2) {
    ends[i]!.partner = ends[i + 1]!;
    ends[i + 1]!.partner = ends[i]!;
  }
  return ends;
}

/** Follows boundaries and steps from the left end of a floor round to itself. */
function traceLoop(start: End, used: Set<Boundary>): Chain {
  const loop: Curve[] = [];
  let end = start;
  let before: Boundary | undefined;
  do {
    used.add(end.boundary);
    const far = end.opposite!;
    const last = loop[loop.length - 1];
    // Stretches of one piece that follow each other are one curve of the outline.
    if (last !== undefined && before?.piece === end.boundary.piece)
      loop[loop.length - 1] = { ...last, x1: far.x, y1: far.y };
    else loop.push(boundaryCurve(end, far));
    const next = far.partner!;
    const stepped = Math.abs(next.y - far.y) > SAME_LENGTH;
    if (stepped) loop.push({ x0: far.x, y0: far.y, x1: next.x, y1: next.y, cx: 0, cy: 0, r: 0, turn: 0 });
    before = stepped ? undefined : end.boundary;
    end = next;
  } while (end !== start);
  return loop;
}

/** A boundary in the direction of travel. */
function boundaryCurve(from: End, to: End): Curve {
  const { cx, cy, r, turn } = from.boundary.piece;
  const way = (from.isRight ? -turn : turn) as -1 | 0 | 1;
  return { x0: from.x, y0: from.y, x1: to.x, y1: to.y, cx, cy, r, turn: way };
}
