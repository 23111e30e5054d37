import type { SetUp } from '@fielded/core';
import { arc, type Loop, polygon } from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { type Item, path, text } from '../scene.ts';
import { sayPlan } from '../words/english/plan.ts';
import type { InVoice } from '../words/lengths.ts';

const WORD = 2.5;
/** Length of an arrow's head, paper mm. */
const HEAD = 3.4;

/** The way it turns on the paper, where angles grow clockwise: -1 counterclockwise. */
function turnOf({ rotation }: SetUp): 1 | -1 {
  return rotation === 'clockwise' ? 1 : -1;
}

/**
 * The knives with their real rake and wedge: the face runs from the tip in to the body, R·sin γ off the axis, leading in the
 * way it turns; the back leaves the tip by the wedge angle.
 */
export function drawnKnives(setUp: SetUp, scale: number): Loop[] {
  const { tool } = setUp;
  const radius = (tool.cuttingDiameter / 2) * scale;
  const body = (tool.bodyDiameter / 2) * scale;
  const turn = turnOf(setUp);
  const rake = (tool.rake * Math.PI) / 180;
  const wedge = (tool.wedge * Math.PI) / 180;
  return Array.from({ length: Math.min(tool.knives, 12) }, (_, k) => {
    const at = Math.PI / 2 + 0.35 * turn + (2 * Math.PI * k) / tool.knives;
    const tip = [radius * Math.cos(at), radius * Math.sin(at)] as const;
    // Inwards along the face and the back: raked, the face runs in behind the radius of its tip.
    const inward = at + Math.PI;
    const face = meetCircle(tip, inward + rake * turn, body);
    const back = meetCircle(tip, inward + (rake + wedge) * turn, body);
    return polygon([tip, face, back]);
  });
}

/** Where a line from a point outside a circle about the origin meets it first; its nearest point where it passes by. */
function meetCircle([x, y]: readonly [number, number], angle: number, radius: number): readonly [number, number] {
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const along = -(x * dx + y * dy);
  const off = x * x + y * y - along * along;
  const length = along - Math.sqrt(Math.max(0, radius * radius - off));
  return [x + length * dx, y + length * dy];
}

/** Which way the head turns, as an arrow about the axis. */
export function rotationArrow(setUp: SetUp, radius: number): Item[] {
  const turn = turnOf(setUp);
  const [from, to] = turn === 1 ? [-2.6, -0.6] : [-0.54, -2.54];
  const point = (angle: number, r: number) => [r * Math.cos(angle), r * Math.sin(angle)] as const;
  const [x0, y0] = point(from, radius);
  const [x1, y1] = point(to, radius);
  const back = to - (turn * HEAD) / radius;
  const head = polygon([
    point(to + (turn * 0.4 * HEAD) / radius, radius),
    point(back, radius + HEAD * 0.45),
    point(back, radius - HEAD * 0.45),
  ]);
  return [
    path('rotation', 'judged', [{ curves: [arc(x0, y0, x1, y1, 0, 0, turn)], closed: false }]),
    path('rotation head', 'judged-fill', [head]),
  ];
}

/** Which way the work is fed, as an arrow along the fence, `half` of its length to each side. */
export function feedArrow({ feedDirection }: SetUp, y: number, half: number, voice: InVoice): Item[] {
  const way = feedDirection === 'right to left' ? -1 : 1;
  const tip = way * half;
  const head = polygon([
    [tip, y],
    [tip - way * HEAD * 1.3, y - HEAD * 0.6],
    [tip - way * HEAD * 1.3, y + HEAD * 0.6],
  ]);
  return [
    path('feed', 'judged', [stroke(-way * half, y, tip - way * HEAD, y)]),
    path('feed head', 'judged-fill', [head]),
    text(
      'feed word',
      'text',
      -way * half,
      y - 1.4,
      sayPlan('picture.feed', {}, voice),
      WORD,
      way === 1 ? 'start' : 'end',
    ),
  ];
}
