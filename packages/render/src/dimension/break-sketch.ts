import type { Point } from '@fielded/geometry';
import {
  type Box,
  type Curve,
  chainLoops,
  cropLoops,
  curvesBetween,
  joinCurves,
  type Loop,
  placeLoops,
  swapAxes,
} from '@fielded/geometry';
import { breakLine } from '../geometry/break-line.ts';
import type { Item } from '../scene.ts';
import { path, textBox } from '../scene.ts';
import { STYLES } from '../style.ts';
import type { Sketch } from './sketch.ts';

/** Left open between the two break lines, paper mm. */
const OPEN = 3;
/** Kept between a break line and the nearest point that is dimensioned. */
const KEPT = 8;
const FAR = 1e6;

/**
 * Shortens a sketch by taking a strip out of it, between two break lines, so that everything else keeps its true size.
 *
 * The strip comes out of the longest stretch in which nothing is dimensioned, and takes at most what that stretch has to
 * give; a sketch with nothing to give comes back as it is. Dimensions keep their figures and run across the break.
 */
export function breakSketch(sketch: Sketch, axis: 'x' | 'y', by: number): Sketch {
  const stretch = longestFree(sketch, axis);
  const give = stretch.to - stretch.from - 2 * KEPT - OPEN;
  const out = Math.min(by + OPEN, give + OPEN);
  if (!(give > 1)) return sketch;
  const middle = (stretch.from + stretch.to) / 2;
  const strip = { from: middle - out / 2, to: middle + out / 2 };
  const shift = OPEN - out;
  const [dx, dy] = axis === 'x' ? [shift, 0] : [0, shift];
  const point = <P extends Point>(p: P): P => {
    const at = axis === 'x' ? p.x : p.y;
    return at < middle ? p : { ...p, x: p.x + dx, y: p.y + dy };
  };
  const curves = (list: readonly Curve[]) => {
    const [near, far] = partsOf([{ curves: list, closed: false }], axis, strip);
    return [...near, ...placeLoops(joinCurves(far), { scale: 1, x: dx, y: dy }).flatMap((loop) => loop.curves)];
  };
  const level = (value: number, upright: boolean) =>
    upright === (axis === 'x') && value > middle ? value + shift : value;
  const { around } = sketch;
  return {
    items: [...breakItems(sketch.items, axis, strip, shift), breakLines(sketch.woods, axis, strip)],
    outlines: curves(sketch.outlines),
    woods: breakClosed(sketch.woods, axis, strip, shift),
    around: axis === 'x' ? { ...around, x1: around.x1 + shift } : { ...around, y1: around.y1 + shift },
    tiers: sketch.tiers.map((d) => ({ ...d, from: point(d.from), to: point(d.to) })),
    interiors: sketch.interiors.map((d) => ({
      ...d,
      from: point(d.from),
      to: point(d.to),
      levels: d.levels.map((value) => level(value, d.side === 'left' || d.side === 'right')),
    })),
    leaders: sketch.leaders.map((d) => ({
      ...d,
      targets: outside(d.targets, axis, strip).map(point),
      spare: outside(d.spare ?? [], axis, strip).map(point),
    })),
    angles: (sketch.angles ?? []).map((d) => ({ ...d, vertex: point(d.vertex) })),
    ordinates: (sketch.ordinates ?? []).map((d) => ({ ...d, point: point(d.point) })),
  };
}

/** The points that the strip leaves; all, if it leaves none. */
function outside<P extends Point>(points: readonly P[], axis: 'x' | 'y', strip: Strip): readonly P[] {
  const left = points.filter((p) => p[axis] <= strip.from || p[axis] >= strip.to);
  return left.length ? left : points;
}

interface Strip {
  readonly from: number;
  readonly to: number;
}

/** The longest stretch along the axis in which no dimension starts, ends or leads, and nothing is lettered. */
function longestFree(sketch: Sketch, axis: 'x' | 'y'): Strip {
  const { around } = sketch;
  const [low, high] = axis === 'x' ? [around.x0, around.x1] : [around.y0, around.y1];
  const points: Point[] = [
    ...sketch.tiers.flatMap((d) => [d.from, d.to]),
    ...sketch.interiors.flatMap((d) => [d.from, d.to]),
    // A leader with a choice of places gives up those in the strip.
    ...sketch.leaders.flatMap((d) => (d.targets.length === 1 ? d.targets : [])),
    ...(sketch.angles ?? []).map((d) => d.vertex),
    ...(sketch.ordinates ?? []).map((d) => d.point),
    ...lettered(sketch.items),
  ];
  const levels = sketch.interiors.flatMap((d) =>
    (d.side === 'left' || d.side === 'right') === (axis === 'x') ? [d.levels[0]!] : [],
  );
  const stops = [low, high, ...points.map((p) => (axis === 'x' ? p.x : p.y)), ...levels].filter(
    (v) => v >= low && v <= high,
  );
  stops.sort((a, b) => a - b);
  let best: Strip = { from: low, to: low };
  for (let i = 1; i < stops.length; i += 1) {
    if (stops[i]! - stops[i - 1]! > best.to - best.from) best = { from: stops[i - 1]!, to: stops[i]! };
  }
  return best;
}

/** The corners of texts that are part of the drawing, such as the letters of a section line. */
function lettered(items: readonly Item[]): Point[] {
  return items.flatMap((item) => {
    if (item.kind === 'group') return lettered(item.items);
    if (item.kind !== 'text') return [];
    const { x0, y0, x1, y1 } = textBox(item);
    return [
      { x: x0, y: y0 },
      { x: x1, y: y1 },
    ];
  });
}

function partsOf(loops: readonly Loop[], axis: 'x' | 'y', strip: Strip): [Curve[], Curve[]] {
  if (axis === 'x') return [curvesBetween(loops, -FAR, strip.from), curvesBetween(loops, strip.to, FAR)];
  const swapped = loops.map((loop) => ({ ...loop, curves: loop.curves.map(swapAxes) }));
  return [curvesBetween(swapped, -FAR, strip.from).map(swapAxes), curvesBetween(swapped, strip.to, FAR).map(swapAxes)];
}

/** The two boxes that are kept, before and after the strip. */
function keptBoxes(axis: 'x' | 'y', { from, to }: Strip): [Box, Box] {
  const all = { x0: -FAR, y0: -FAR, x1: FAR, y1: FAR };
  return axis === 'x'
    ? [
        { ...all, x1: from },
        { ...all, x0: to },
      ]
    : [
        { ...all, y1: from },
        { ...all, y0: to },
      ];
}

function breakClosed(loops: readonly Loop[], axis: 'x' | 'y', strip: Strip, shift: number): Loop[] {
  const [near, far] = keptBoxes(axis, strip).map((box) => {
    return loops.flatMap((loop) => {
      const { outline, cuts } = cropLoops([loop], box);
      return chainLoops([...outline, ...cuts]);
    });
  });
  return [...near!, ...placeLoops(far!, { scale: 1, x: axis === 'x' ? shift : 0, y: axis === 'y' ? shift : 0 })];
}

function breakItems(items: readonly Item[], axis: 'x' | 'y', strip: Strip, shift: number): Item[] {
  const middle = (strip.from + strip.to) / 2;
  return items.map((item): Item => {
    if (item.kind === 'group') return { ...item, items: breakItems(item.items, axis, strip, shift) };
    if (item.kind === 'text' || item.kind === 'image') {
      if ((axis === 'x' ? item.x : item.y) < middle) return item;
      return axis === 'x' ? { ...item, x: item.x + shift } : { ...item, y: item.y + shift };
    }
    const filled = STYLES[item.role].fill !== undefined;
    if (filled) return { ...item, loops: breakClosed(item.loops, axis, strip, shift) };
    const [near, far] = partsOf(item.loops, axis, strip);
    const moved = placeLoops(joinCurves(far), { scale: 1, x: axis === 'x' ? shift : 0, y: axis === 'y' ? shift : 0 });
    return { ...item, loops: [...joinCurves(near), ...moved] };
  });
}

/** Break lines on both sides of the strip, across all wood there. */
function breakLines(woods: readonly Loop[], axis: 'x' | 'y', strip: Strip): Item {
  const [box] = keptBoxes(axis, strip);
  const { cuts } = cropLoops(woods, box);
  const at = cuts.flatMap((c) => (axis === 'x' ? [c.y0, c.y1] : [c.x0, c.x1]));
  if (!at.length) return path(`break ${axis} ${strip.from.toFixed(2)}`, 'break', []);
  const lines = [strip.from, strip.from + OPEN].map((value) => {
    const plumb = breakLine(value, Math.min(...at), Math.max(...at));
    return axis === 'x' ? plumb : { ...plumb, curves: plumb.curves.map(swapAxes) };
  });
  return path(`break ${axis} ${strip.from.toFixed(2)}`, 'break', lines);
}
