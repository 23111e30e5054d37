/** A point of an outline drawn by hand, mm: in from the panel's edge and down from the worked face; reached by a line or an arc. */
export interface DrawnPoint {
  readonly x: number;
  readonly y: number;
  readonly by: 'line' | 'arc';
}

/** Points snap to this grid, mm: half a millimetre, or 1/32 in where the job is in inches. */
export const GRIDS: Readonly<Record<'mm' | 'in', number>> = { mm: 0.5, in: 25.4 / 32 };
/** A point moved finely keeps to this grid, mm: a tenth of a millimetre, or 1/64 in. */
export const FINE_GRIDS: Readonly<Record<'mm' | 'in', number>> = { mm: 0.1, in: 25.4 / 64 };
/** A line within this of level, plumb or the way the arc before it ends, degrees, is made exactly so. */
const SNAP = 6;
/** An arc whose chord is within this of the one that ends level or plumb, degrees, is made to end so. */
const SNAP_ARC = 3;

interface Direction {
  readonly x: number;
  readonly y: number;
}

/** The ways that an arc may be made to end: level or plumb. */
const SQUARE: readonly Direction[] = [
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: 1 },
  { x: 0, y: -1 },
];

/**
 * The point that a hand meant, mm: on the grid; a line nearly level, plumb or going on from the arc before it is made exactly so, and so is
 * an arc that nearly ends level or plumb. An outline starts at the panel's edge.
 */
export function snapPoint(
  points: readonly DrawnPoint[],
  x: number,
  y: number,
  by: DrawnPoint['by'],
  grid: number = GRIDS.mm,
): DrawnPoint {
  const onGrid = (mm: number) => Math.max(0, Math.round(mm / grid) * grid);
  const last = points.at(-1);
  if (last === undefined) return { x: 0, y: onGrid(y), by: 'line' };
  const [dx, dy] = [x - last.x, y - last.y];
  const going = endDirection(points);
  if (by === 'arc')
    return squareEnd(last, going ?? LEVEL, { x: dx, y: dy }, onGrid) ?? { x: onGrid(x), y: onGrid(y), by };
  const degrees = (to: Direction) => degreesBetween({ x: dx, y: dy }, to);
  if (degrees({ x: Math.sign(dx) || 1, y: 0 }) < SNAP) return { x: onGrid(x), y: last.y, by };
  if (degrees({ x: 0, y: Math.sign(dy) || 1 }) < SNAP) return { x: last.x, y: onGrid(y), by };
  if (last.by === 'arc' && going !== null && degrees(going) < SNAP) {
    const along = dx * going.x + dy * going.y;
    return { x: last.x + along * going.x, y: last.y + along * going.y, by };
  }
  return { x: onGrid(x), y: onGrid(y), by };
}

/**
 * The outline with one point moved here, as near as a grid of `step` mm allows, or just here for null; on the coarse grid it snaps as
 * a new point does. Arcs after it go on touching what comes before them. The first point stays on the panel's edge.
 */
export function movePoint(
  points: readonly DrawnPoint[],
  index: number,
  x: number,
  y: number,
  step: number | null,
): DrawnPoint[] {
  const { by } = points[index]!;
  const near = (mm: number) => (step === null ? mm : Math.max(0, clean(Math.round(mm / step) * step)));
  const isCoarse = step === GRIDS.mm || step === GRIDS.in;
  const moved: DrawnPoint = isCoarse
    ? snapPoint(points.slice(0, index), x, y, by, step!)
    : { x: index === 0 ? 0 : near(x), y: near(y), by };
  return points.map((point, i) => (i === index ? moved : point));
}

/** The outline without one of its points; whichever is first then lies on the panel's edge. */
export function removePoint(points: readonly DrawnPoint[], index: number): DrawnPoint[] {
  const left = points.filter((_, i) => i !== index);
  return left.map((point, i) => (i === 0 ? { x: 0, y: point.y, by: 'line' } : point));
}

/** Where an arc ends exactly level or plumb: its chord halves the angle between the ways it sets off and ends. Null where it is not near that. */
function squareEnd(
  last: DrawnPoint,
  going: Direction,
  chord: Direction,
  onGrid: (mm: number) => number,
): DrawnPoint | null {
  for (const end of SQUARE) {
    const half = unit(going.x + end.x, going.y + end.y);
    // Ending as it set off it would be a line; turned right round it has no one chord.
    if (half === null || going.x * end.x + going.y * end.y > 0.999) continue;
    if (degreesBetween(chord, half) > SNAP_ARC) continue;
    const isSteep = Math.abs(half.y) > Math.abs(half.x);
    const reached = isSteep ? onGrid(last.y + chord.y) - last.y : onGrid(last.x + chord.x) - last.x;
    const along = reached / (isSteep ? half.y : half.x);
    const [x, y] = [last.x + along * half.x, last.y + along * half.y];
    if (along > 1e-9 && x >= -1e-9 && y >= -1e-9) return { x: clean(x), y: clean(y), by: 'arc' };
  }
  return null;
}

/** A length without rounding errors, never below 0. */
function clean(mm: number): number {
  return Math.max(0, Math.round(mm * 1e9) / 1e9);
}

function degreesBetween(one: Direction, other: Direction): number {
  const cross = one.x * other.y - one.y * other.x;
  return Math.abs((Math.atan2(cross, one.x * other.x + one.y * other.y) * 180) / Math.PI);
}

/** The way that the outline is going where it ends; null before it has gone anywhere. */
function endDirection(points: readonly DrawnPoint[]): Direction | null {
  let going: Direction | null = null;
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [points[i - 1]!, points[i]!];
    const chord = unit(to.x - from.x, to.y - from.y);
    if (chord === null) continue;
    if (to.by === 'line') going = chord;
    else {
      // A circle that is left along `start` is left again along its mirror in the chord.
      const start: Direction = going ?? LEVEL;
      const along: number = 2 * (start.x * chord.x + start.y * chord.y);
      going = { x: along * chord.x - start.x, y: along * chord.y - start.y };
    }
  }
  return going;
}

/** An arc without anything before it sets off level from the edge. */
const LEVEL: Direction = { x: 1, y: 0 };

/**
 * The outline as path data. An arc goes on in the way that the outline was going: of all circles through its ends the one
 * that touches that way; radius = chord² / (2 · the chord's distance to that line).
 *
 * @example drawnPath([{ x: 0, y: 5, by: 'line' }, { x: 9, y: 5, by: 'line' }, { x: 14, y: 0, by: 'arc' }])
 * // 'M 0 5 L 9 5 A 5 5 0 0 0 14 0'
 */
export function drawnPath(points: readonly DrawnPoint[]): string {
  const say = (mm: number) => String(Number(mm.toFixed(6)));
  return points
    .map((to, i) => {
      if (i === 0) return `M ${say(to.x)} ${say(to.y)}`;
      const from = points[i - 1]!;
      const going = endDirection(points.slice(0, i)) ?? LEVEL;
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const side = going.x * dy - going.y * dx;
      if (to.by === 'line' || Math.abs(side) < 1e-9) return `L ${say(to.x)} ${say(to.y)}`;
      const radius = (dx * dx + dy * dy) / (2 * Math.abs(side));
      const isLarge = going.x * dx + going.y * dy < 0;
      return `A ${say(radius)} ${say(radius)} 0 ${isLarge ? 1 : 0} ${side > 0 ? 1 : 0} ${say(to.x)} ${say(to.y)}`;
    })
    .join(' ');
}

/** What an outline still lacks to be cut; null for nothing. */
export function lacksOf(points: readonly DrawnPoint[]): string | null {
  const last = points.at(-1);
  if (last === undefined) return 'Begin at the panel’s edge, as deep as the cut goes there.';
  if (last.y > 0) return 'Go on until it reaches the face.';
  return points.length < 2 || points[0]!.y <= 0 ? 'It takes nothing off: begin deeper.' : null;
}

function unit(x: number, y: number): Direction | null {
  const length = Math.hypot(x, y);
  return length < 1e-9 ? null : { x: x / length, y: y / length };
}
