import { formatLength } from '@fielded/core';
import type { Desk } from '../desk/desk.ts';
import { type Handle, type Move, openMoves } from './handles.ts';
import { type GripHooks, listenToKeys, listenToPointer, type Rack } from './hold-grips.ts';
import { createGround, createSvg, setIfOther } from './svg-element.ts';
import { FINGER } from './under-finger.ts';
import type { Anchors, Spot } from './view-scene.ts';

/** The small open circles on the arrises. */
export interface Grips {
  /** `held`: something is moved by hand, and only what that moves is gone over. */
  place(handles: readonly Handle[], anchors: Anchors, scale: number, perMm: number, held: boolean): void;
}

const RADIUS = 5;

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
    const place = placeOn(handle, spot, scale);
    if (!isNear(rack.spots.get(key)!, place)) putGrip(rack, known, key, place, [known.lastElementChild!]);
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
  putGrip(rack, grip, key, placeOn(handle, spot, scale));
  const [finger, ring] = grip.children as unknown as [SVGCircleElement, SVGCircleElement];
  setIfOther(finger, 'r', (FINGER / perMm).toFixed(2));
  setIfOther(ring, 'r', (RADIUS / perMm).toFixed(2));
  describeGrip(grip, handle, moves, desk);
}

function placeOn({ at }: Handle, spot: Spot, scale: number): Spot {
  return { x: spot.x + at.x * scale, y: spot.y + at.y * scale };
}

/** Nearer than this, paper mm, a grip is not moved: where it stands is written to a thousandth. */
const NEAR = 1e-6;

function isNear(one: Spot, other: Spot): boolean {
  return Math.abs(one.x - other.x) < NEAR && Math.abs(one.y - other.y) < NEAR;
}

/** Puts a grip on its arris, or only some of its circles. */
function putGrip(
  rack: Rack,
  grip: SVGGElement,
  key: string,
  place: Spot,
  circles: Iterable<Element> = grip.children,
): void {
  rack.spots.set(key, place);
  // Each circle by its own middle: a transform that changes has the browser take its layers apart.
  const [cx, cy] = [place.x.toFixed(3), place.y.toFixed(3)];
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
  const grip = createSvg('g', { class: 'grip', tabindex: '-1', role: 'slider', 'data-handle': key });
  grip.append(createSvg('circle', { class: 'finger' }), createSvg('circle', { class: 'ring' }));
  rack.layer.append(grip);
  listenToKeys(rack, grip, key);
  return grip;
}

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
