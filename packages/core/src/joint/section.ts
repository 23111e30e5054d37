/** What one cut clears: the edge of it, in cut coordinates, and the face it works. */
export interface ClearedRegion {
  readonly side: 'front' | 'back';
  readonly edge: Chain;
}

/**
 * A stretch of a thread over [x0, x1] and what it bounds: +1 where that lies below it (it is a top), -1 above, 0 neither.
 * `wood` what is left, `gone` what is removed, `own` what its own cut would take from the full stock. `outer`: no wood lies
 * beyond it, so it is the section's surface.
 */
export interface Boundary {
  readonly thread: Thread;
  readonly x0: number;
  readonly x1: number;
  /** The numbers of the strips it begins with and ends before. */
  readonly first: number;
  readonly end: number;
  readonly wood: -1 | 0 | 1;
  readonly gone: -1 | 0 | 1;
  readonly own: -1 | 0 | 1;
  readonly outer: boolean;
}

/** From one x to another, mm. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** A panel's edge after its cuts. Section coordinates: x in from the finished edge, y up from the back face, mm. */
export interface Section {
  readonly thickness: number;
  readonly width: number;
  /** In order of their left ends. */
  readonly boundaries: readonly Boundary[];
  /** What is left and what is gone of the stock over 0 ≤ x ≤ width, each computed from its own boundaries. */
  readonly wood: Moments;
  readonly removed: Moments;
  /** What each cut would take from the full stock alone, mm². */
  readonly takenAlone: readonly number[];
  /** Whether two of the cuts take some of the same wood. */
  readonly overlapping: boolean;
  /** Where no wood is left, and where it lies in two or more layers. */
  readonly gaps: readonly Span[];
  readonly layered: readonly Span[];
}

/** The stock's number among the regions; the cuts follow from 1. */
const STOCK = 0;

/**
 * Cuts the stock, a rectangle `width` × `thickness`, with any number of cleared regions.
 *
 * Everything is read off strips (see walkStrips): in each, the stock's two faces and the regions' edges lie one above
 * another, and wood is what is inside the stock and inside no region. A boundary keeps its lines and arcs whole, so areas and
 * moments are exact to rounding (formulas 2 and 5). The order of the regions does not matter to the section.
 */
export function cutSection(thickness: number, width: number, regions: readonly ClearedRegion[]): Section {
  const threads = placeThreads(thickness, width, regions);
  const reading = new StripReader(regions);
  const takenAlone: number[] = [];
  for (let k = 0; k < regions.length; k++) takenAlone.push(0);
  const boundaries: Writable<Boundary>[] = [];
  const latest: (Writable<Boundary> | undefined)[] = [];
  for (let k = 0; k < threads.length; k++) latest.push(undefined);
  const gaps: Writable<Span>[] = [];
  const layered: Writable<Span>[] = [];
  let overlapping = false;

  walkStrips(threads, 0, width, (strip) => {
    reading.read(strip);
    const { number, left, right, order } = strip;
    if (reading.layers === 0) extendSpan(gaps, left, right);
    if (reading.layers > 1) extendSpan(layered, left, right);
    if (reading.overlapping) overlapping = true;
    for (const k of reading.throughFront) takenAlone[k - 1]! += thickness * (right - left);
    for (let i = 0; i < order.length; i++) {
      const thread = order[i]!;
      const { wood, gone, own, outer } = reading.roles[i]!;
      const b = latest[thread.id];
      if (b?.end === number && b.wood === wood && b.gone === gone && b.own === own && b.outer === outer) {
        b.x1 = right;
        b.end = number + 1;
      } else if (wood !== 0 || gone !== 0 || own !== 0) {
        const begun = { thread, x0: left, x1: right, first: number, end: number + 1, wood, gone, own, outer };
        latest[thread.id] = begun;
        boundaries.push(begun);
      }
    }
  });

  const wood: Moments = { area: 0, x: 0, y: 0 };
  const removed: Moments = { area: 0, x: 0, y: 0 };
  for (const b of boundaries) {
    const under = momentsUnder(b.thread, b.x0, b.x1);
    addTimes(wood, under, b.wood);
    addTimes(removed, under, b.gone);
    if (b.thread.of !== STOCK) takenAlone[b.thread.of - 1]! += b.own * under.area;
  }
  return { thickness, width, boundaries, wood, removed, takenAlone, overlapping, gaps, layered };
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** The stock's faces and every region's edge as threads in section coordinates. */
function placeThreads(thickness: number, width: number, regions: readonly ClearedRegion[]): Thread[] {
  const threads = [levelThread(0, width, 0, STOCK, 0), levelThread(0, width, thickness, STOCK, 1)];
  for (let k = 0; k < regions.length; k++) {
    const { side, edge } = regions[k]!;
    threadChain(edge, k + 1, threads, side === 'front' ? thickness : null);
  }
  return threads;
}

interface Role {
  wood: -1 | 0 | 1;
  gone: -1 | 0 | 1;
  own: -1 | 0 | 1;
  outer: boolean;
}

/**
 * Reads one strip after another: which thread bounds what. Its fields speak of the strip read last. Plain fields and methods: private
 * ones, checked at every call, took a tenth of a small section's time.
 */
class StripReader {
  /** One for each thread of the strip, lowest first. */
  readonly roles: Role[] = [];
  /** How many layers of wood there are, and whether two cuts share some of the stock. */
  layers = 0;
  overlapping = false;
  /** The regions that take the stock's front face here. */
  readonly throughFront: number[] = [];

  readonly fromBack: boolean[] = [false];
  readonly inside: boolean[] = [false];

  constructor(regions: readonly ClearedRegion[]) {
    for (const { side } of regions) {
      this.fromBack.push(side === 'back');
      this.inside.push(false);
    }
  }

  read(strip: Readonly<Strip>): void {
    const { order } = strip;
    const { roles, throughFront, inside } = this;
    let covered = this.startBelow(order);
    let floor = -1;
    let roof = -1;
    let inStock = false;
    let inWood = false;
    let inGone = false;
    this.layers = 0;
    this.overlapping = false;
    while (throughFront.length > 0) throughFront.pop();
    while (roles.length < order.length) roles.push({ wood: 0, gone: 0, own: 0, outer: false });
    for (let i = 0; i < order.length; i++) {
      const { of } = order[i]!;
      const role = roles[i]!;
      const isInside = !inside[of];
      inside[of] = isInside;
      if (of === STOCK) {
        inStock = isInside;
        if (!inStock && covered > 0) for (let k = 1; k < inside.length; k++) if (inside[k]) throughFront.push(k);
      } else covered += isInside ? 1 : -1;
      const wood = inStock && covered === 0;
      const gone = inStock && covered > 0;
      role.wood = 0;
      role.outer = false;
      role.gone = step(inGone, gone);
      role.own = of === STOCK || !inStock ? 0 : isInside ? -1 : 1;
      if (covered > 1 && gone) this.overlapping = true;
      if (wood && !inWood) floor = i;
      if (inWood && !wood && !liesOn(strip, floor, i)) {
        roles[floor]!.wood = -1;
        role.wood = 1;
        if (this.layers++ === 0) roles[floor]!.outer = true;
        roof = i;
      }
      inWood = wood;
      inGone = gone;
    }
    if (roof >= 0) roles[roof]!.outer = true;
  }

  /** A cut from the back is open downwards: below all its threads the strip lies inside it if it has an odd number of them here. */
  startBelow(order: readonly Thread[]): number {
    const { inside, fromBack } = this;
    for (let k = 0; k < inside.length; k++) inside[k] = false;
    let covered = 0;
    for (let i = 0; i < order.length; i++) {
      const { of } = order[i]!;
      if (!fromBack[of]) continue;
      inside[of] = !inside[of];
      covered += inside[of] ? 1 : -1;
    }
    return covered;
  }
}

function step(below: boolean, above: boolean): -1 | 0 | 1 {
  return below === above ? 0 : below ? 1 : -1;
}

/** Lengthens the last span to `to`, or begins a new one. */
function extendSpan(spans: Writable<Span>[], from: number, to: number): void {
  const last = spans[spans.length - 1];
  if (last !== undefined && from - last.to <= SAME_LENGTH) last.to = to;
  else spans.push({ from, to });
}

function addTimes(sum: Moments, m: Moments, times: number): void {
  sum.area += times * m.area;
  sum.x += times * m.x;
  sum.y += times * m.y;
}

import {
  type Chain,
  levelThread,
  liesOn,
  type Moments,
  momentsUnder,
  SAME_LENGTH,
  type Strip,
  type Thread,
  threadChain,
  walkStrips,
} from '@fielded/geometry';
