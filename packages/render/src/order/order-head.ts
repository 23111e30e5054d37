import type { KnifeReport } from '@fielded/core';
import { arc, type Loop, line, placeLoops, polygon, poseLoops, readLoops, rectangle } from '@fielded/geometry';
import { circle } from '../geometry/circle.ts';
import { stroke } from '../geometry/stroke.ts';
import { group, type Item, path, text } from '../scene.ts';
import { fitText, wrapText } from '../text/measure-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import { type InVoice, scaleText } from '../words/lengths.ts';

const WORDS = 2.5;
const SCALES = [1, 0.5, 0.2, 0.1] as const;

/** The knife in its head, seen along the axis and square to it, each in half of a room `width` wide; `height` is that of both, mm. */
export function drawHead(
  knife: KnifeReport,
  voice: InVoice,
  x: number,
  y: number,
  width: number,
): { items: Item[]; height: number; scale: number } {
  const half = width / 2 - 6;
  const scale = SCALES.find((s) => 2 * knife.cuttingRadius * s <= half) ?? SCALES[SCALES.length - 1]!;
  const radius = knife.cuttingRadius * scale;
  const cy = y + 8 + radius;
  const along = drawAlongAxis(knife, scale, x + half / 2, cy);
  const beside = drawAlongSpindle(knife, scale, x + width / 2 + 6 + half / 2, cy);
  const words = headWords(knife, voice).flatMap((line) => wrapText(line, WORDS, width));
  const below = cy + radius + 7;
  return {
    scale,
    height: below - y + words.length * 4.4,
    items: [
      text(
        'head scale',
        'quiet',
        x,
        y + 2.5,
        fitText(sayKnife('order.in-head', { scale: scaleText(scale, voice) }, voice), WORDS, width),
        WORDS,
      ),
      group('along the axis', along),
      group('along the spindle', beside),
      ...words.map((line, i) => text(`head note ${i}`, 'text', x, below + i * 4.4, line, WORDS)),
    ],
  };
}

/** Axis, cutting circle, limiter's circle, body; the knife's face with its rake, its ground back and thickness. */
function drawAlongAxis(knife: KnifeReport, scale: number, cx: number, cy: number): Item[] {
  const { cuttingRadius: R, rake, wedge, thickness, bodyRadius, limiter } = knife;
  const put = (loops: readonly Loop[]) => placeLoops(loops, { scale, x: cx, y: cy, mirrored: turnsLeft(knife) });
  const tilt = (rake * Math.PI) / 180;
  // The tip stands at the top; the face runs inwards from it, leaning off the radius by the rake.
  const down = { x: -Math.sin(tilt), y: Math.cos(tilt) };
  const length = knife.length + 2;
  const inner = { x: down.x * length, y: -R + down.y * length };
  // The ground back leaves the tip at the wedge angle from the face and meets the knife's own back at its thickness.
  const ground = thickness / Math.sin((wedge * Math.PI) / 180);
  const lean = tilt + (wedge * Math.PI) / 180;
  const heel = { x: -Math.sin(lean) * ground, y: -R + Math.cos(lean) * ground };
  const along = heel.x * down.x + (heel.y + R) * down.y;
  const off = { x: heel.x - down.x * along, y: heel.y + R - down.y * along };
  const foot = { x: inner.x + off.x, y: inner.y + off.y };
  const steel: Loop = {
    closed: true,
    curves: [
      line(0, -R, inner.x, inner.y),
      line(inner.x, inner.y, foot.x, foot.y),
      line(foot.x, foot.y, heel.x, heel.y),
      line(heel.x, heel.y, 0, -R),
    ],
  };
  const cross = stroke(-5 / scale, 0, 5 / scale, 0);
  const upright = stroke(0, -R - 4 / scale, 0, 5 / scale);
  return [
    path('axis', 'cutter', put([cross, upright])),
    path('cutting circle', 'cutter', put([circle(R)])),
    ...(limiter ? [path('limiter circle', 'hidden', put([circle(R - limiter.gap.least)]))] : []),
    path('body', 'fine', put([circle(bodyRadius)])),
    ...turnArrow(put, R + 4 / scale, 3 / scale),
    path('steel', 'removed', put([steel])),
    path('knife', 'outline', put([steel])),
  ];
}

/** Axis, body and the section that the knife cuts, as it stands along the spindle with the deep end up. */
function drawAlongSpindle(knife: KnifeReport, scale: number, cx: number, cy: number): Item[] {
  const { cuttingRadius: R, bodyRadius, headHeight } = knife;
  const half = headHeight / 2;
  const [wood] = readLoops(knife.wood.outline);
  const ss = wood!.curves.flatMap((c) => [c.x0, c.x1]);
  const middle = (Math.min(...ss) + Math.max(...ss)) / 2;
  // Stations run up the sheet, reach to the right: (s, t) becomes (R − t, middle − s).
  const section = poseLoops({ xx: 0, xy: -1, x0: R, yx: -1, yy: 0, y0: middle }, [{ ...wood!, closed: false }]);
  const put = (loops: readonly Loop[]) => placeLoops(loops, { scale, x: cx, y: cy });
  const body = rectangle({ x0: -bodyRadius, y0: -half, x1: bodyRadius, y1: half });
  const axis = stroke(0, -half - 8 / scale, 0, half + 8 / scale);
  const least = stroke(knife.leastRadius, -half - 3 / scale, knife.leastRadius, half + 3 / scale);
  return [
    path('spindle axis', 'cutter', put([axis])),
    path('body', 'fine', put([body])),
    path('section', 'outline', put(section)),
    path('panel edge', 'hidden', put([least])),
  ];
}

function headWords({ limiter, cuttingRadius, bodyRadius, leastRadius }: KnifeReport, voice: InVoice): string[] {
  const circles = { circle: 2 * cuttingRadius, body: 2 * bodyRadius, out: cuttingRadius - bodyRadius };
  const gap = limiter?.gap.least ?? 0;
  return [
    sayKnife('order.circle', circles, voice),
    limiter
      ? sayKnife('order.limiter-circle', { circle: 2 * (cuttingRadius - gap), out: gap }, voice)
      : sayKnife('order.no-limiter', {}, voice),
    sayKnife('order.edge-passes', { radius: leastRadius, clear: leastRadius - bodyRadius }, voice),
  ];
}

/** Whether the face looks to the left, seen from the end that cuts deepest. */
function turnsLeft({ groundFor: { run, rotation } }: KnifeReport): boolean {
  return (run === 'under') === (rotation === 'counterclockwise');
}

/** An arrow outside the cutting circle, the way the head turns before it is mirrored: to the right at the top. */
function turnArrow(put: (loops: readonly Loop[]) => Loop[], r: number, size: number): Item[] {
  const at = (angle: number, out: number) => [Math.sin(angle) * out, -Math.cos(angle) * out] as const;
  const [from, to] = [at(0.35, r), at(0.8, r)];
  const tip = at(0.8 + size / r, r);
  const head = polygon([tip, at(0.8, r + size / 3), at(0.8, r - size / 3)]);
  const shaft: Loop = { closed: false, curves: [arc(from[0], from[1], to[0], to[1], 0, 0, 1)] };
  return [path('turns', 'thin', put([shaft])), path('turns to', 'arrow', put([head]))];
}
