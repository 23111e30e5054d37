import { curveBox, joinBoxes } from '@fielded/geometry';
import { type Door, type Insertion, layOpenings, panelSize, type Size } from './door.ts';
import type { DoorPanel } from './door-report.ts';
import { areaWithin } from './outline-measures.ts';
import { volumeTaken } from './panel-volume.ts';
import { shapedPanel } from './shaped-head-report.ts';
import { hasOutline, type ShapedPanel, shapedOutline } from './shaped-panel.ts';
import { integrate, type TakenStretch, volumeTakenRound } from './volume-taken-round.ts';

/** What all panels of a job have in common. Lengths mm, areas mm². */
export interface PanelSection {
  readonly thickness: number;
  /** How far in from the edge the field begins. */
  readonly field: number;
  /** Removed area of the section, and the overlap of two edges' cuts at a corner, mm³. */
  readonly area: number;
  readonly overlap: number;
  /** What the cuts take of the thickness, from the edge inwards. */
  readonly taken: readonly TakenStretch[];
  /** kg/m³ at the moisture made; null where the wood is not known. */
  readonly density: number | null;
}

/** The panels of a door, equal ones together; all doors and leaves counted. */
export function listPanels(door: Door, insertion: Insertion, section: PanelSection): DoorPanel[] {
  const doors = door.quantity * door.leaves;
  const found: { size: Size; count: number; shaped: ShapedPanel | null }[] = [];
  for (const opening of layOpenings(door)) {
    const shaped = door.head && opening.row === 0 ? shapedPanel(door.head, opening, insertion) : null;
    const size = blankSize(panelSize(opening, insertion), shaped);
    const same = found.find((other) => isSameSize(other.size, size) && (other.shaped !== null) === (shaped !== null));
    if (same === undefined) found.push({ size, count: 1, shaped });
    else same.count++;
  }
  return found.map(({ size, count, shaped }) => {
    const volume = shaped === null ? panelVolume(size, section) : shapedVolume(shaped, section);
    return {
      ...size,
      quantity: count * doors,
      grain: door.grain,
      ...(shaped && { shaped: true as const }),
      field: shaped === null || hasOutline(shaped, section.field) ? fieldOf(size, section.field) : null,
      volume,
      weight: section.density === null ? null : (volume / 1e9) * section.density,
    };
  });
}

/** What a panel is sawn from: where the shaped head runs to a point, that stands higher than its sight edge by more than goes into the groove. */
function blankSize(size: Size, shaped: ShapedPanel | null): Size {
  if (shaped?.shaped.shape !== 'outline' || !hasOutline(shaped, 0)) return size;
  const box = joinBoxes(shapedOutline(shaped, 0).map(curveBox))!;
  const height = box.y1 - box.y0;
  return height > size.height + SAME_SIZE ? { ...size, height } : size;
}

const SAME_SIZE = 1e-6;

/** Sizes that differ by no more than rounding. */
function isSameSize(one: Size, other: Size): boolean {
  return Math.abs(one.width - other.width) < SAME_SIZE && Math.abs(one.height - other.height) < SAME_SIZE;
}

/** Volume of one panel as cut, mm³. */
function panelVolume({ width, height }: Size, section: PanelSection): number {
  const { thickness, area, overlap, taken } = section;
  const half = Math.min(width, height) / 2;
  if (taken.some(({ x1 }) => x1 > half)) return volumeWithin(half, { width, height }, section);
  return width * height * thickness - volumeTaken(width, height, area, overlap);
}

/** Volume of a panel whose cuts meet in its middle: what the nearest edge's cuts leave, ring by ring inwards. */
function volumeWithin(half: number, { width, height }: Size, { thickness, taken }: PanelSection): number {
  const ring = (a: number) => 2 * (width + height) - 8 * a;
  return taken.reduce((volume, { x0, x1, taken: at }) => {
    const to = Math.min(x1, half);
    return to <= x0 ? volume : volume + integrate(x0, to, (a) => (thickness - at(a)) * ring(a));
  }, 0);
}

/** The same under a shaped head; without its cuts where they leave no outline to go round. */
function shapedVolume(panel: ShapedPanel, { thickness, taken }: PanelSection): number {
  const whole = areaWithin(shapedOutline(panel, 0)) * thickness;
  const deepest = taken.reduce((most, { x1 }) => Math.max(most, x1), 0);
  return hasOutline(panel, deepest) ? whole - volumeTakenRound(panel, taken) : whole;
}

/** The flat between the raises; null where they meet. */
function fieldOf({ width, height }: Size, start: number): Size | null {
  const field = { width: width - 2 * start, height: height - 2 * start };
  return Math.min(field.width, field.height) > SAME_SIZE ? field : null;
}

/** Width of a panel across its grain, and its length along it. */
export function alongGrain({ width, height, grain }: Pick<DoorPanel, 'width' | 'height' | 'grain'>): {
  readonly across: number;
  readonly length: number;
} {
  return grain === 'up' ? { across: width, length: height } : { across: height, length: width };
}
