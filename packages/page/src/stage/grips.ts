import { formatLength } from '@fielded/core';
import type { Desk } from '../desk/desk.ts';
import { type Drag, letGo, nudge, startDrag } from './drag.ts';
import { type Handle, type Move, openMoves } from './handles.ts';
import { openDimensionOf } from './mark-dimensions.ts';
import { createGround, createSvg, setIfOther } from './svg-element.ts';
import { FINGER, findPressed } from './under-finger.ts';
import type { Anchors, Spot } from './view-scene.ts';

interface GripHooks {
  /** Screen pixels of a mm of wood. */
  pixelsPerMm(): number;
  take(handle: Handle): void;
  showReadout(shown: { text: string; x: number; y: number } | null): void;
  /** Where a point of the paper stands on the sheet, pixels. */
  onScreen(spot: Spot): Spot;
}

/** The small open circles on the arrises. */
export interface Grips {
  /** `held`: something is moved by hand, and only what that moves is gone over. */
  place(handles: readonly Handle[], anchors: Anchors, scale: number, perMm: number, held: boolean): void;
}

const RADIUS = 5;
/** How long after the last arrow key the drawing settles, ms. */
const PAUSE = 700;

/** The grips of one drawing, by their handles' keys. */
interface Rack {
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

/** Keeps a circle with a finger's room round it for each handle, by its key. */
export function createGrips(node: SVGSVGElement, root: SVGGElement, desk: Desk, hooks: GripHooks): Grips {
  const layer = root.appendChild(createSvg('g', { class: 'grips' }));
  layer.append(createGround());
  const rack: Rack = { node, layer, desk, hooks, grips: new Map(), handles: new Map(), spots: new Map(), active: null };
  listenToPointer(rack);
  return {
    place(list, anchors, scale, perMm, held) {
      const wanted = new Set(list.map(({ key }) => key));
      for (const [key, grip] of rack.grips) if (!wanted.has(key) && !grip.classList.contains('held')) remove(rack, key);
      for (const handle of list) placeGrip(rack, handle, anchors[handle.at.on], scale, perMm, held);
    },
  };
}

function placeGrip(rack: Rack, handle: Handle, spot: Spot | null, scale: number, perMm: number, held: boolean): void {
  const { desk } = rack;
  const { key } = handle;
  const known = rack.grips.get(key);
  if (held && known !== undefined && spot !== null && key !== rack.active) {
    rack.handles.set(key, handle);
    // Its room for a finger comes after it when the hand lets go.
    putGrip(rack, known, handle, spot, scale, [known.lastElementChild!]);
    return;
  }
  const moves = openMoves(handle, desk.doc.value.data, desk.job.value, desk.report.value);
  if (spot === null || (moves.level === undefined && moves.plumb === undefined)) {
    remove(rack, key);
    return;
  }
  rack.handles.set(key, handle);
  const grip = known ?? create(rack, key);
  rack.grips.set(key, grip);
  putGrip(rack, grip, handle, spot, scale);
  const [finger, ring] = grip.children as unknown as [SVGCircleElement, SVGCircleElement];
  setIfOther(finger, 'r', (FINGER / perMm).toFixed(2));
  setIfOther(ring, 'r', (RADIUS / perMm).toFixed(2));
  describeGrip(grip, handle, moves, desk);
}

/** Puts a grip on its arris, or only some of its circles. */
function putGrip(
  rack: Rack,
  grip: SVGGElement,
  { key, at }: Handle,
  spot: Spot,
  scale: number,
  circles: Iterable<Element> = grip.children,
): void {
  const x = spot.x + at.x * scale;
  const y = spot.y + at.y * scale;
  rack.spots.set(key, { x, y });
  // Each circle by its own middle: a transform that changes has the browser take its layers apart.
  const [cx, cy] = [x.toFixed(3), y.toFixed(3)];
  for (const circle of circles) {
    setIfOther(circle, 'cx', cx);
    setIfOther(circle, 'cy', cy);
  }
}

function remove({ grips, handles }: Rack, key: string): void {
  grips.get(key)?.remove();
  grips.delete(key);
  handles.delete(key);
}

function create(rack: Rack, key: string): SVGGElement {
  const grip = createSvg('g', { class: 'grip', tabindex: '0', role: 'slider', 'data-handle': key });
  grip.append(createSvg('circle', { class: 'finger' }), createSvg('circle', { class: 'ring' }));
  rack.layer.append(grip);
  listenToKeys(rack, grip, key);
  return grip;
}

/** Shows beside a grip the size that is moved, and what it comes to now. */
function say({ grips, handles, spots, hooks, desk }: Rack, key: string, move: Move | null): void {
  if (!grips.has(key) || move === null) return;
  const handle = handles.get(key)!;
  // The size that was set off with stays the one that is read, whatever else has become of the arris.
  const now = handle.level?.of === move.of ? handle.level : handle.plumb?.of === move.of ? handle.plumb : move;
  const { x, y } = hooks.onScreen(spots.get(key)!);
  hooks.showReadout({ text: `${move.name} ${formatLength(now.mm, desk.units.value)}`, x, y: y - FINGER });
}

/** A drag goes on wherever the hand is; a press that was none opens the figure under it. */
function listenToPointer(rack: Rack): void {
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

function listenToKeys(rack: Rack, grip: SVGGElement, key: string): void {
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

function describeGrip(grip: SVGGElement, handle: Handle, moves: { level?: Move; plumb?: Move }, desk: Desk): void {
  const say = (move: Move | undefined) => (move ? `${move.name} ${formatLength(move.mm, desk.units.value)}` : '');
  const main = (moves.plumb ?? moves.level)!;
  const words = [say(moves.level), say(moves.plumb)].filter((word) => word !== '').join(', ');
  const ways = moves.level && moves.plumb ? 'both' : moves.level ? 'level' : 'plumb';
  const set = (name: string, value: string) => setIfOther(grip, name, value);
  set('data-ways', ways);
  set('aria-label', handle.name);
  set('aria-valuenow', main.mm.toFixed(3));
  set('aria-valuemin', String(Math.min(main.least, main.mm).toFixed(3)));
  set('aria-valuemax', String(Math.max(main.most, main.mm).toFixed(3)));
  set('aria-valuetext', words);
}
