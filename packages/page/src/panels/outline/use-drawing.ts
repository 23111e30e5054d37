import { type Signal, useSignal } from '@preact/signals';
import { type DrawnPoint, lacksOf, snapPoint } from './drawn-outline.ts';

/** A press this near to the face, mm, means the face: a finger is no more precise. */
const NEAR_FACE = 0.8;

/** An outline as it is drawn, point by point. Lengths mm: in from the edge, down from the face. */
export interface Drawing {
  readonly points: readonly DrawnPoint[];
  /** How the next point is reached. */
  readonly by: Signal<DrawnPoint['by']>;
  /** The point that `goOn` would add. */
  readonly next: DrawnPoint;
  /** What the outline still lacks to be cut; null for nothing. */
  readonly lacks: string | null;
  /** The pointer is here: the next point follows. */
  follow(x: number, y: number): void;
  goOn(): void;
  /** Adds a point just here, on no grid. */
  goTo(x: number, y: number): void;
  /** Takes the last point back. */
  back(): void;
  /** Arrow keys move the next point, Enter adds it, Backspace takes the last one back. */
  listen(event: KeyboardEvent): void;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Keeps an outline that is drawn on paper `wide` by `deep`, its points on a grid, all mm. */
export function useDrawing(wide: number, deep: number, grid: number): Drawing {
  const drawn = useSignal<readonly DrawnPoint[]>([]);
  const by = useSignal<DrawnPoint['by']>('line');
  const at = useSignal({ x: 0, y: 5 });
  const points = drawn.value;
  const snapped = () => snapPoint(drawn.value, at.value.x, at.value.y, by.value, grid);
  const add = (point: DrawnPoint) => {
    drawn.value = [...drawn.value, point];
    at.value = { x: point.x, y: point.y };
  };
  const back = () => {
    drawn.value = drawn.value.slice(0, -1);
  };
  return {
    points,
    by,
    next: snapped(),
    lacks: lacksOf(points),
    follow(x, y) {
      at.value = { x: within(wide, x), y: y < NEAR_FACE ? 0 : Math.min(deep, y) };
    },
    goOn: () => add(snapped()),
    // An outline begins at the edge.
    goTo: (x, y) => add(points.length === 0 ? { x: 0, y, by: 'line' } : { x, y, by: by.value }),
    back,
    listen(event) {
      const way = ARROWS[event.key];
      if (way === undefined && event.key !== 'Enter' && event.key !== 'Backspace') return;
      event.preventDefault();
      if (event.key === 'Enter') return add(snapped());
      if (way === undefined) return back();
      const step = event.shiftKey ? grid : 2 * grid;
      at.value = { x: within(wide, at.value.x + way[0] * step), y: within(deep, at.value.y + way[1] * step) };
    },
  };
}

/** A length of no less than 0 and no more than `most`. */
function within(most: number, length: number): number {
  return Math.min(most, Math.max(0, length));
}
