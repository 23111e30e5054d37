import { useSignal } from '@preact/signals';
import { type DrawnPoint, lacksOf, movePoint, removePoint, snapPoint } from './drawn-outline.ts';

/** A press this near to the face, mm, means the face: a finger is no more precise. */
const NEAR_FACE = 0.8;

/** An outline as it is drawn, point by point. Lengths mm: in from the edge, down from the face. */
export interface Drawing {
  readonly points: readonly DrawnPoint[];
  /** How the next point is reached, or the one in hand. */
  readonly by: DrawnPoint['by'];
  /** Reaches it so; the outline begins at its first point, which is reached by nothing. */
  reach(by: DrawnPoint['by']): void;
  /** The point that `goOn` would add. */
  readonly next: DrawnPoint;
  /** The point in hand, which is moved or removed, by its index; null while the outline is drawn on. */
  readonly chosen: number | null;
  /** What the outline still lacks to be cut; null for nothing. */
  readonly lacks: string | null;
  /** The pointer is here: the next point follows. */
  follow(x: number, y: number): void;
  goOn(): void;
  /** Adds a point just here, on no grid; moves the point in hand there, if one is. */
  goTo(x: number, y: number): void;
  choose(index: number | null): void;
  /** Remembers the outline as it is, for `back`: before a point is moved by a hand. */
  keep(): void;
  /** Moves the point in hand here: on the grid, or by tenths (1/64 in) where it is done finely. */
  move(x: number, y: number, finely: boolean): void;
  remove(): void;
  /** Takes the last step back: a point added, moved or removed. Null where there is none. */
  readonly back: (() => void) | null;
  /** Arrow keys move the next point, or the one in hand; Enter adds it; Backspace takes back, or removes the one in hand; L and A reach it by a line or an arc. */
  listen(event: KeyboardEvent): void;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Keys that choose how a point is reached. */
const REACHED: Readonly<Record<string, DrawnPoint['by']>> = { l: 'line', a: 'arc' };
const ELSE = ['Enter', 'Backspace', 'Delete', 'Escape', 'PageUp', 'PageDown'];

/** Keeps an outline that is drawn on paper `wide` by `deep`, its points on a grid and moved finely on another, all mm. */
export function useDrawing(wide: number, deep: number, grid: number, fine: number): Drawing {
  const { drawn, hand, choose, keep, push, put, reachInHand, remove, back } = usePoints(wide, deep);
  const by = useSignal<DrawnPoint['by']>('line');
  const at = useSignal({ x: 0, y: 5 });
  const points = drawn.value;
  const chosen = hand.value;
  const snapped = () => snapPoint(drawn.value, at.value.x, at.value.y, by.value, grid);
  const add = (point: DrawnPoint) => {
    push(point);
    at.value = { x: point.x, y: point.y };
  };
  const nudge = ([right, down]: readonly [number, number], finely: boolean) => {
    if (chosen !== null) {
      keep();
      const { x, y } = points[chosen]!;
      const step = finely ? fine : grid;
      return put(x + right * step, y + down * step, null);
    }
    const step = finely ? grid : 2 * grid;
    at.value = { x: between(wide, at.value.x + right * step), y: between(deep, at.value.y + down * step) };
  };
  const drawing: Drawing = {
    points,
    by: chosen === null ? by.value : points[chosen]!.by,
    reach(kind) {
      if (hand.value === null) by.value = kind;
      else reachInHand(hand.value, kind);
    },
    next: snapped(),
    chosen,
    lacks: lacksOf(points),
    follow(x, y) {
      at.value = { x: between(wide, x), y: y < NEAR_FACE ? 0 : Math.min(deep, y) };
    },
    goOn: () => add(snapped()),
    goTo(x, y) {
      if (chosen === null) return add(points.length === 0 ? { x: 0, y, by: 'line' } : { x, y, by: by.value });
      keep();
      put(x, y, null);
    },
    choose,
    keep,
    move: (x, y, finely) => (finely ? put(x, y, fine) : put(x, y < NEAR_FACE ? 0 : y, grid)),
    remove,
    back,
    listen: (event) => listenToKey(event, drawing, { add: () => add(snapped()), nudge }),
  };
  return drawing;
}

/** The points of an outline on paper of this size, mm; the one in hand, which is put, reached otherwise or removed; and the steps that led here. */
function usePoints(wide: number, deep: number) {
  const drawn = useSignal<readonly DrawnPoint[]>([]);
  const past = useSignal<readonly (readonly DrawnPoint[])[]>([]);
  const hand = useSignal<number | null>(null);
  const keep = () => {
    past.value = [...past.value, drawn.value];
  };
  const choose = (index: number | null) => {
    hand.value = index;
  };
  const push = (point: DrawnPoint) => {
    keep();
    drawn.value = [...drawn.value, point];
  };
  const put = (x: number, y: number, step: number | null) => {
    drawn.value = movePoint(drawn.value, hand.value!, between(wide, x), between(deep, y), step);
  };
  const reachInHand = (index: number, kind: DrawnPoint['by']) => {
    if (index === 0 || drawn.value[index]!.by === kind) return;
    keep();
    drawn.value = drawn.value.map((point, i) => (i === index ? { ...point, by: kind } : point));
  };
  const remove = () => {
    keep();
    drawn.value = removePoint(drawn.value, hand.value!);
    choose(null);
  };
  const goBack = () => {
    drawn.value = past.value.at(-1)!;
    past.value = past.value.slice(0, -1);
    if (hand.value !== null && hand.value >= drawn.value.length) choose(null);
  };
  const back = past.value.length === 0 ? null : goBack;
  return { drawn, hand, choose, keep, push, put, reachInHand, remove, back };
}

/** What a key does to a drawing. */
function listenToKey(
  event: KeyboardEvent,
  drawing: Drawing,
  { add, nudge }: { add(): void; nudge(way: readonly [number, number], finely: boolean): void },
): void {
  const { key } = event;
  const { points, chosen, back, choose, remove } = drawing;
  const undoes = key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey);
  const way = ARROWS[key];
  const reached = event.ctrlKey || event.metaKey || event.altKey ? undefined : REACHED[key.toLowerCase()];
  if (way === undefined && !ELSE.includes(key) && !undoes && reached === undefined) return;
  if (key === 'Escape' && chosen === null) return;
  event.preventDefault();
  event.stopPropagation();
  const deletes = key === 'Backspace' || key === 'Delete';
  if (undoes) back?.();
  else if (reached !== undefined) drawing.reach(reached);
  else if (way !== undefined) nudge(way, event.shiftKey);
  else if (key === 'PageUp' || key === 'PageDown') choose(beside(points.length, chosen, key === 'PageUp' ? -1 : 1));
  else if (chosen !== null) deletes ? remove() : choose(null);
  else if (key === 'Enter') add();
  else back?.();
}

/** The point before or after the one in hand; from none, the last or the first. Null past either end. */
function beside(count: number, chosen: number | null, step: 1 | -1): number | null {
  const index = chosen === null ? (step > 0 ? 0 : count - 1) : chosen + step;
  return index >= 0 && index < count ? index : null;
}

/** A length of no less than 0 and no more than `most`. */
function between(most: number, length: number): number {
  return Math.min(most, Math.max(0, length));
}
