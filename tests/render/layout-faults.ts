import type { Item, PathItem, Scene, TextItem } from '@fielded/render';
import { textWidth } from '@fielded/render';

export interface Rectangle {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

type Corner = readonly [number, number];

const OUTLINES = new Set(['outline', 'judged', 'trouble', 'break', 'old']);
/** Lines that no figure or word may be crossed by, hatching included. */
const THIN = new Set([
  'thin',
  'dimension',
  'judged-thin',
  'trouble-thin',
  'cutter',
  'hidden',
  'hatch',
  'hatch-frame',
  'grain',
]);
const ARROWS = new Set(['arrow', 'judged-fill', 'trouble-fill']);
/** Texts that merely touch are not a fault: boxes are shrunk by this, mm. */
const TOUCH = 0.02;

/** A drawing's texts, arrowheads and lines, each with the keys that lead to it. */
interface Marks {
  readonly texts: readonly { readonly name: string; readonly item: TextItem }[];
  readonly arrows: readonly Line[];
  readonly lines: readonly Line[];
}

/** Of drawings that are looked through more than once. */
const marksRead = new WeakMap<Scene, Marks>();

function readMarks(scene: Scene): Marks {
  const known = marksRead.get(scene);
  if (known !== undefined) return known;
  const texts: { name: string; item: TextItem }[] = [];
  const arrows: Line[] = [];
  const lines: Line[] = [];
  const visit = (items: readonly Item[], path: string) => {
    for (const item of items) {
      const name = `${path}/${item.key}`;
      if (item.kind === 'group') visit(item.items, name);
      else if (item.kind === 'text') texts.push({ name: `${name} “${item.text}”`, item });
      else if (item.kind === 'image') continue;
      else if (ARROWS.has(item.role)) for (const corners of flatten(item)) arrows.push(lineOf(name, corners));
      else if (OUTLINES.has(item.role) || THIN.has(item.role))
        for (const corners of flatten(item)) lines.push(lineOf(name, corners));
    }
  };
  visit(scene.items, '');
  const marks = { texts, arrows, lines };
  marksRead.set(scene, marks);
  return marks;
}

/**
 * What a reader of the drawing would stumble over: every text that lies over another text, over an arrowhead, over an
 * outline or any other line, and every text off the paper. Works from the finished scene alone and shares nothing with the
 * layout but the table of widths, or not even that where `boxOf` gives the boxes of texts as they were painted.
 */
export function layoutFaults(scene: Scene, boxOf: (item: TextItem) => Rectangle = boxOfText): string[] {
  const { arrows, lines, ...marks } = readMarks(scene);
  const texts = marks.texts.map(({ name, item }) => ({ name, box: boxOf(item) }));
  const faults: string[] = [];
  texts.forEach(({ name, box }, i) => {
    for (let k = i + 1; k < texts.length; k += 1)
      if (overlap(box, texts[k]!.box)) faults.push(`${name} over ${texts[k]!.name}`);
    for (const arrow of arrows) if (meets(arrow, box)) faults.push(`${name} over arrow ${arrow.name}`);
    for (const line of lines) if (meets(line, box)) faults.push(`${name} over line ${line.name}`);
    if (box.x0 < 0 || box.y0 < 0 || box.x1 > scene.width || box.y1 > scene.height) faults.push(`${name} off the paper`);
  });
  return faults;
}

const LONGEST_LEADER = 25;
const NEAR_HATCH = (5 * Math.PI) / 180;

/**
 * Leaders longer than 25 mm on the paper, within 5° of the hatching's 45°, or with an arrow that ends on nothing: further than
 * 0.3 mm from every outline.
 */
export function leaderFaults(scene: Scene): string[] {
  const outlines: Corner[][] = [];
  const leaders: { name: string; from: Corner; to: Corner; arrow: boolean }[] = [];
  const visit = (items: readonly Item[], path: string) => {
    for (const item of items) {
      const name = `${path}/${item.key}`;
      if (item.kind === 'path' && (OUTLINES.has(item.role) || item.role === 'cutter' || item.key === 'drawn'))
        outlines.push(...flatten(item));
      if (item.kind !== 'group') continue;
      const lines = item.items.find((inner) => inner.kind === 'path' && inner.key === 'lines');
      const arrows = item.items.find((inner) => inner.kind === 'path' && inner.key === 'arrows');
      if (item.of !== undefined && lines?.kind === 'path') {
        const found = findLeader(lines.loops.flatMap(({ curves }) => curves));
        const arrow = arrows?.kind === 'path' && arrows.loops.length === 1;
        if (found) leaders.push({ name, ...found, arrow });
      }
      visit(item.items, name);
    }
  };
  visit(scene.items, '');
  return leaders.flatMap(({ name, from, to, arrow }) => {
    const faults: string[] = [];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length > LONGEST_LEADER + 1e-6) faults.push(`${name} is ${length.toFixed(1)} mm long`);
    const quarter = Math.PI / 2;
    const off = (((Math.atan2(to[1] - from[1], to[0] - from[0]) - quarter / 2) % quarter) + quarter) % quarter;
    if (Math.min(off, quarter - off) < NEAR_HATCH) faults.push(`${name} runs along the hatching`);
    const near = { x0: from[0] - 0.3, x1: from[0] + 0.3, y0: from[1] - 0.3, y1: from[1] + 0.3 };
    if (arrow && !outlines.some((corners) => polylineMeets(corners, near))) faults.push(`${name} leads to nothing`);
    return faults;
  });
}

/** A slanting line with a level one from its end: where it starts and where its shelf begins. */
function findLeader(curves: readonly { x0: number; y0: number; x1: number; y1: number; turn: number }[]) {
  for (const slant of curves) {
    if (slant.turn !== 0 || Math.abs(slant.y1 - slant.y0) < 0.5 || Math.abs(slant.x1 - slant.x0) < 0.5) continue;
    const shelf = curves.find(
      ({ x0, y0, y1 }) => Math.hypot(x0 - slant.x1, y0 - slant.y1) < 1e-6 && Math.abs(y1 - y0) < 1e-9,
    );
    if (!shelf) continue;
    // Where it was interrupted for a text, it starts with the piece furthest from the shelf.
    const [dx, dy] = [slant.x1 - slant.x0, slant.y1 - slant.y0];
    const pieces = curves.filter(
      ({ x0, y0 }) => Math.abs(dx * (y0 - slant.y1) - dy * (x0 - slant.x1)) < 1e-6 * Math.hypot(dx, dy),
    );
    const away = ({ x0, y0 }: { x0: number; y0: number }) => Math.hypot(x0 - slant.x1, y0 - slant.y1);
    const first = pieces.reduce((far, piece) => (away(piece) > away(far) ? piece : far), slant);
    return { from: [first.x0, first.y0] as Corner, to: [slant.x1, slant.y1] as Corner };
  }
  return null;
}

/** Every text of a scene that stands in a dimension, with what it says it shows. */
export function dimensionTexts(scene: Scene): { of: string; value: number; texts: string[] }[] {
  const found: { of: string; value: number; texts: string[] }[] = [];
  const visit = (items: readonly Item[]) => {
    for (const item of items) {
      if (item.kind !== 'group') continue;
      if (item.of === undefined) visit(item.items);
      else {
        const texts = item.items.filter((inner) => inner.kind === 'text');
        const shown = texts.filter(({ key }) => key === 'figure' || key === 'under').map(({ text }) => text);
        found.push({ of: item.of, value: item.value!, texts: shown });
      }
    }
  };
  visit(scene.items);
  return found;
}

function boxOfText(item: TextItem): Rectangle {
  const width = textWidth(item.text, item.height) - 2 * TOUCH;
  const before = TOUCH + (item.anchor === 'middle' ? width / 2 : item.anchor === 'end' ? width : 0);
  const start = item.anchor === 'start' ? TOUCH : -before;
  // Tails of IBM Plex Sans, as shares of its capitals: g 0.30, y 0.29, / 0.22, a comma 0.19.
  const drop = item.height * (/[gjpqyQ();]/.test(item.text) ? 0.3 : /[/,]/.test(item.text) ? 0.22 : 0);
  if (item.upright) {
    return { x0: item.x - item.height + TOUCH, x1: item.x + drop, y0: item.y - start - width, y1: item.y - start };
  }
  return { x0: item.x + start, x1: item.x + start + width, y0: item.y - item.height + TOUCH, y1: item.y + drop };
}

/** Lines as they are, arcs as chords of at most 1°. */
function flatten(item: PathItem): Corner[][] {
  return item.loops.map(({ curves }) => {
    const corners: Corner[] = curves[0] ? [[curves[0].x0, curves[0].y0]] : [];
    for (const c of curves) {
      if (c.turn !== 0) {
        const from = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
        let sweep = (Math.atan2(c.y1 - c.cy, c.x1 - c.cx) - from) * c.turn;
        if (sweep < 0) sweep += 2 * Math.PI;
        const steps = Math.ceil((sweep * 180) / Math.PI) + 1;
        for (let i = 1; i < steps; i += 1) {
          const angle = from + (c.turn * sweep * i) / steps;
          corners.push([c.cx + c.r * Math.cos(angle), c.cy + c.r * Math.sin(angle)]);
        }
      }
      corners.push([c.x1, c.y1]);
    }
    return corners;
  });
}

function overlap(a: Rectangle, b: Rectangle): boolean {
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

/** A run of straight lines, and the box that it lies in. */
interface Line extends Rectangle {
  readonly name: string;
  readonly corners: readonly Corner[];
}

function lineOf(name: string, corners: readonly Corner[]): Line {
  const box = {
    x0: Number.POSITIVE_INFINITY,
    y0: Number.POSITIVE_INFINITY,
    x1: Number.NEGATIVE_INFINITY,
    y1: Number.NEGATIVE_INFINITY,
  };
  for (const [x, y] of corners) {
    box.x0 = Math.min(box.x0, x);
    box.x1 = Math.max(box.x1, x);
    box.y0 = Math.min(box.y0, y);
    box.y1 = Math.max(box.y1, y);
  }
  return { name, corners, ...box };
}

/** Whether a line comes inside the rectangle; most lie to one side of it. */
function meets(line: Line, box: Rectangle): boolean {
  return (
    line.x0 < box.x1 && box.x0 < line.x1 && line.y0 < box.y1 && box.y0 < line.y1 && polylineMeets(line.corners, box)
  );
}

/** Whether a run of straight lines comes inside the rectangle: a corner lies in it, or a line crosses one of its diagonals. */
function polylineMeets(corners: readonly Corner[], box: Rectangle): boolean {
  const { x0, y0, x1, y1 } = box;
  for (let i = 0; i < corners.length; i++) {
    const [x, y] = corners[i]!;
    if (x > x0 && x < x1 && y > y0 && y < y1) return true;
    if (i === 0) continue;
    const [fromX, fromY] = corners[i - 1]!;
    // Most lines lie to one side of it, and cross nothing of it.
    if ((x < x0 && fromX < x0) || (x > x1 && fromX > x1) || (y < y0 && fromY < y0) || (y > y1 && fromY > y1)) continue;
    if (crosses(fromX, fromY, x, y, x0, y0, x1, y1) || crosses(fromX, fromY, x, y, x0, y1, x1, y0)) return true;
  }
  return false;
}

/** Whether the line from a to b crosses the one from c to d, each inside the other's ends. */
function crosses(ax: number, ay: number, bx: number, by: number, cx: number, cy: number, dx: number, dy: number) {
  return (
    side(ax, ay, bx, by, cx, cy) * side(ax, ay, bx, by, dx, dy) < 0 &&
    side(cx, cy, dx, dy, ax, ay) * side(cx, cy, dx, dy, bx, by) < 0
  );
}

/** On which side of the line from a to b the point p lies: positive to its left. */
function side(ax: number, ay: number, bx: number, by: number, px: number, py: number): number {
  return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
}
