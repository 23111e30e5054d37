import { type Signal, useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useRef } from 'preact/hooks';
import type { DrawnPoint } from './drawn-outline.ts';
import type { Drawing } from './use-drawing.ts';

/** Paper left free round the wood, mm. */
export const ROUND = 2;

/** A press this near to a point, pixels, means the point: nearer than a finger's width, so that short lines can be drawn beside it. */
const AT_POINT = 14;
/** A hand that has moved less than this, pixels, has tapped. */
const TAP = 5;
/** How many times slower a point moves under a hand that is beside it. */
const SLOWER = 4;

/** What a press on the paper moves: where it began, px, and the point in hand as it lay then, mm. */
interface Press {
  readonly from: { readonly x: number; readonly y: number };
  readonly point: { readonly x: number; readonly y: number } | null;
  readonly finely: boolean;
  /** Whether the hand has moved: until then it may be a tap. */
  moved: boolean;
}

interface Presses {
  readonly held: Signal<boolean>;
  onPointerDown(event: PointerEvent): void;
  onPointerMove(event: PointerEvent): void;
  onPointerUp(event: PointerEvent): void;
  onPointerCancel(): void;
}

/**
 * What presses on squared paper do to the outline that is drawn on it: a tap draws on or takes a point in hand, a hand that
 * moves follows the next point or moves the one in hand. `held`: whether the paper is pressed.
 */
export function usePress(pad: RefObject<SVGSVGElement | null>, wide: number, drawing: Drawing): Presses {
  const { points, chosen } = drawing;
  const press = useRef<Press | null>(null);
  const held = useSignal(false);
  const scale = () => (wide + 2 * ROUND) / pad.current!.getBoundingClientRect().width;
  const placeOf = (event: PointerEvent) => {
    const box = pad.current!.getBoundingClientRect();
    return { x: (event.clientX - box.left) * scale() - ROUND, y: (event.clientY - box.top) * scale() - ROUND };
  };
  const begin = (event: PointerEvent) => {
    if (!event.isPrimary) return;
    pad.current?.setPointerCapture(event.pointerId);
    const place = placeOf(event);
    const index = nearestTo(points, place, AT_POINT * scale());
    // A press beside the point in hand moves that, finely.
    const moves = index ?? chosen;
    press.current = {
      from: { x: event.clientX, y: event.clientY },
      point: moves === null ? null : points[moves]!,
      finely: index === null,
      moved: false,
    };
    held.value = true;
    if (moves === null) drawing.follow(place.x, place.y);
    else if (moves !== chosen) drawing.choose(moves);
  };
  const go = (event: PointerEvent) => {
    const now = press.current;
    if (now === null) {
      const place = placeOf(event);
      if (chosen === null && event.pointerType === 'mouse') drawing.follow(place.x, place.y);
      return;
    }
    const [dx, dy] = [event.clientX - now.from.x, event.clientY - now.from.y];
    if (now.point === null) {
      const place = placeOf(event);
      return drawing.follow(place.x, place.y);
    }
    if (!now.moved && Math.hypot(dx, dy) < TAP) return;
    if (!now.moved) drawing.keep();
    now.moved = true;
    const by = scale() / (now.finely ? SLOWER : 1);
    drawing.move(now.point.x + dx * by, now.point.y + dy * by, now.finely);
  };
  const end = (event: PointerEvent) => {
    const now = press.current;
    if (now === null || !event.isPrimary) return;
    go(event);
    press.current = null;
    held.value = false;
    if (now.point === null) drawing.goOn();
    // A tap beside the point in hand lets go of it.
    else if (!now.moved && now.finely) drawing.choose(null);
  };
  const cancel = () => {
    press.current = null;
    held.value = false;
  };
  return { held, onPointerDown: begin, onPointerMove: go, onPointerUp: end, onPointerCancel: cancel };
}

/** The index of the point nearest to a place, where one lies within `reach` mm of it. */
function nearestTo(
  points: readonly DrawnPoint[],
  place: { readonly x: number; readonly y: number },
  reach: number,
): number | null {
  const away = points.map(({ x, y }) => Math.hypot(x - place.x, y - place.y));
  const least = Math.min(...away);
  return least <= reach ? away.indexOf(least) : null;
}
