import type { Point } from '@fielded/geometry';
import { type Curve, curveBox, pointAt } from '@fielded/geometry';
import type { Arrow } from './arrow.ts';
import { ARROW_LENGTH } from './arrow.ts';
import type { Board, LineStretch } from './board.ts';
import { addMarks, CROSSED, joinMarks, weighMarks } from './board.ts';
import type { Figure } from './figure.ts';
import { FIGURE_HEIGHT, letter } from './figure.ts';
import { ANY_DIRECTION, layLeaders } from './leader.ts';
import type { DrawnDimension } from './linear.ts';
import { drawnFigure } from './linear.ts';

/** An angle between two directions from a point. Radians, growing downwards; the arc runs from `from` by `sweep`. */
export interface AngleDimension extends Figure {
  readonly vertex: Point;
  readonly from: number;
  readonly sweep: number;
  /** Radii that the dimension arc may have, the best first; the legs are extended to it. */
  readonly radii: readonly number[];
}

const TAIL = (ARROW_LENGTH + 3) * 1.1;
const EXTENDED = 2;

/**
 * Lays out angles: a dimension arc with arrows (turned outside when it is short) and the figure, level, near its middle; a
 * figure that finds no room there gets a leader to free paper.
 */
export function layAngles(angles: readonly AngleDimension[], board: Board): DrawnDimension[] {
  return angles.map((angle) => {
    const ways = angle.radii.flatMap((radius, rank) =>
      ([1, -1, 0] as const).map((away, order) => {
        const drawn = drawAngle(angle, radius, away);
        return { drawn, radius, away, cost: weighMarks(drawn.marks, board) + rank * 2 + order };
      }),
    );
    const beside = cheapest(ways.filter(({ away }) => away !== 0));
    if (beside.cost < CROSSED) {
      addMarks(beside.drawn.marks, board);
      return beside.drawn;
    }
    const { drawn, radius } = cheapest(ways.filter(({ away }) => away === 0));
    addMarks(drawn.marks, board);
    const middle = angle.from + angle.sweep / 2;
    const target = { x: angle.vertex.x + Math.cos(middle) * radius, y: angle.vertex.y + Math.sin(middle) * radius };
    const targets = [{ ...target, directions: ANY_DIRECTION }];
    const [led] = layLeaders([{ ...angle, targets, arrow: false }], board);
    return {
      ...drawn,
      marks: joinMarks(drawn.marks, led!.marks),
      lines: [...drawn.lines, ...led!.lines],
      texts: led!.texts,
      strained: led!.strained === true,
    };
  });
}

function cheapest<T extends { cost: number }>(ways: readonly T[]): T {
  return ways.reduce((best, way) => (way.cost < best.cost ? way : best));
}

/** `away` 1 puts the figure outside the arc, -1 inside; 0 leaves it out. */
function drawAngle(angle: AngleDimension, radius: number, away: -1 | 0 | 1): DrawnDimension {
  const { vertex, from, sweep } = angle;
  const at = (direction: number, distance: number): [number, number] => [
    vertex.x + Math.cos(direction) * distance,
    vertex.y + Math.sin(direction) * distance,
  ];
  const inside = Math.abs(sweep) * radius >= 2 * ARROW_LENGTH + 1;
  const turn = sweep < 0 ? -1 : 1;
  const tail = inside ? 0 : TAIL / radius;
  const [x0, y0] = at(from - turn * tail, radius);
  const [x1, y1] = at(from + sweep + turn * tail, radius);
  const arc: Curve = { x0, y0, x1, y1, cx: vertex.x, cy: vertex.y, r: radius, turn: turn as 1 | -1 };
  // An arrowhead is straight: half its length off the tangent keeps its back on the arc.
  const lean = ARROW_LENGTH / radius / 2;
  const head = (direction: number, way: number): Arrow => {
    const [x, y] = at(direction, radius);
    const heading = direction + (way * Math.PI) / 2 - way * lean;
    return { x, y, dx: Math.cos(heading), dy: Math.sin(heading) };
  };
  const arrows = inside ? [head(from, -turn), head(from + sweep, turn)] : [head(from, turn), head(from + sweep, -turn)];
  const legs: LineStretch[] = [from, from + sweep].map((direction) => {
    const [ax, ay] = at(direction, 1);
    const [bx, by] = at(direction, radius + EXTENDED);
    return { x0: ax, y0: ay, x1: bx, y1: by };
  });
  const middle = pointAt(arc, 0.5);
  const outward = Math.atan2(middle.y - vertex.y, middle.x - vertex.x);
  const lettering = letter(angle, true);
  const gap = 1.5 + (Math.abs(Math.cos(outward)) * lettering.width + Math.abs(Math.sin(outward)) * FIGURE_HEIGHT) / 2;
  const textX = middle.x + Math.cos(outward) * gap * away - lettering.width / 2;
  // Lettering stands clear above its line; here there is none, so the line is put under the figure.
  const below = FIGURE_HEIGHT / 2 - lettering.parts[0]!.off;
  const textY = middle.y + Math.sin(outward) * gap * away + below;
  const box = curveBox(arc);
  const chord: LineStretch = inside ? { x0, y0, x1, y1 } : { x0: box.x0, y0: box.y0, x1: box.x1, y1: box.y1 };
  const drawn =
    away === 0 ? drawnFigure(angle, legs, arrows) : drawnFigure(angle, legs, arrows, lettering, textX, textY);
  return { ...drawn, arcs: [arc], marks: { ...drawn.marks, lines: [chord, ...legs] } };
}
