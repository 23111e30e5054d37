import { formatLength } from '@fielded/core';
import type { Desk } from '../desk/desk.ts';
import { type Drag, letGo, nudge, startDrag } from './drag.ts';
import type { Handle, Move } from './handles.ts';
import { openDimensionOf } from './mark-dimensions.ts';
import { FINGER, findPressed } from './under-finger.ts';
import type { Spot } from './view-scene.ts';

export interface GripHooks {
  /** Screen pixels of a mm of wood. */
  pixelsPerMm(): number;
  take(handle: Handle): void;
  showReadout(shown: { text: string; x: number; y: number } | null): void;
  /** Where a point of the paper stands on the sheet, pixels. */
  onScreen(spot: Spot): Spot;
}

/** The grips of one drawing, by their handles' keys. */
export interface Rack {
  readonly node: SVGSVGElement;
  readonly layer: SVGGElement;
  readonly desk: Desk;
  readonly hooks: GripHooks;
  readonly grips: Map<string, SVGGElement>;
  readonly handles: Map<string, Handle>;
  readonly spots: Map<string, Spot>;
  /** The one taken hold of last. */
  active: string | null;
}

/** A drag goes on wherever the hand is; a press that was none opens the figure under it. */
export function listenToPointer(rack: Rack): void {
  const { node, desk, hooks } = rack;
  let held: { id: number; key: string; grip: SVGGElement; drag: Drag; x: number; y: number } | null = null;
  const end = (how: 'end' | 'cancel') => {
    held?.drag[how]();
    held?.grip.classList.remove('held');
    held = null;
    hooks.showReadout(null);
  };
  node.addEventListener('pointerdown', (event) => {
    // Two fingers look closer: the first one did not mean to move anything.
    if (!event.isPrimary && held !== null) end('cancel');
    if (event.button !== 0 || !event.isPrimary) return;
    const pressed = findPressed(node, event.clientX, event.clientY);
    if (pressed?.kind !== 'grip') return;
    const grip = pressed.element as SVGGElement;
    const key = grip.getAttribute('data-handle')!;
    const handle = rack.handles.get(key)!;
    rack.active = key;
    hooks.take(handle);
    const drag = startDrag(desk, handle, hooks.pixelsPerMm());
    held = { id: event.pointerId, key, grip, drag, x: event.clientX, y: event.clientY };
    node.setPointerCapture(event.pointerId);
    grip.classList.add('held');
    grip.focus({ preventScroll: true });
    event.preventDefault();
  });
  // A finger on a grip does not scroll the page; anywhere else on the sheet it does.
  node.addEventListener('touchstart', (event) => held !== null && event.preventDefault(), { passive: false });
  node.addEventListener('pointermove', (event) => {
    if (held === null || event.pointerId !== held.id) return;
    say(rack, held.key, held.drag.to(event.clientX - held.x, event.clientY - held.y, event.shiftKey || event.altKey));
  });
  node.addEventListener('pointerup', (event) => event.pointerId === held?.id && end('end'));
  node.addEventListener('pointercancel', (event) => event.pointerId === held?.id && end('cancel'));
  node.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && held !== null) end('cancel');
  });
  node.addEventListener('click', (event) => {
    const pressed = findPressed(node, event.clientX, event.clientY);
    if (pressed?.kind === 'dimension') openDimensionOf(pressed.element);
  });
}

/** How long after the last arrow key the drawing settles, ms. */
const PAUSE = 700;

/** Moves a grip by the arrow keys. */
export function listenToKeys(rack: Rack, grip: SVGGElement, key: string): void {
  const { desk, hooks } = rack;
  let pause: ReturnType<typeof setTimeout> | undefined;
  const rest = () => {
    if (pause === undefined) return;
    clearTimeout(pause);
    pause = undefined;
    desk.settle();
    letGo(desk);
    hooks.showReadout(null);
  };
  grip.addEventListener('keydown', (event) => {
    const way = ARROWS[event.key];
    if (way === undefined || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const handle = rack.handles.get(key)!;
    rack.active = key;
    hooks.take(handle);
    const move = nudge(desk, handle, way[0], way[1], event.shiftKey || event.altKey);
    if (move === null) return;
    clearTimeout(pause);
    pause = setTimeout(rest, PAUSE);
    say(rack, key, move);
  });
  grip.addEventListener('blur', rest);
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Shows beside a grip the size that is moved, and what it comes to now. */
function say({ grips, handles, spots, hooks, desk }: Rack, key: string, move: Move | null): void {
  if (!grips.has(key) || move === null) return;
  const handle = handles.get(key)!;
  // The size that was set off with stays the one that is read, whatever else has become of the arris.
  const now = handle.level?.of === move.of ? handle.level : handle.plumb?.of === move.of ? handle.plumb : move;
  const { x, y } = hooks.onScreen(spots.get(key)!);
  hooks.showReadout({ text: `${move.name} ${formatLength(now.mm, desk.units.value)}`, x, y: y - FINGER });
}
