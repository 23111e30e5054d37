import { type Door, type Insertion, layOpenings, panelSize, type Size } from './door.ts';
import type { DoorPanel } from './door-report.ts';
import { volumeTaken } from './panel-volume.ts';

/** What all panels of a job have in common. Lengths mm, areas mm². */
export interface PanelSection {
  readonly thickness: number;
  /** Greatest reach of a front cut. */
  readonly reach: number;
  /** Removed area of the section, and the overlap of two edges' cuts at a corner, mm³. */
  readonly area: number;
  readonly overlap: number;
  /** kg/m³ at the moisture made; null where the wood is not known. */
  readonly density: number | null;
}

/** The panels of a door, equal ones together; all doors and leaves counted. */
export function listPanels(door: Door, insertion: Insertion, section: PanelSection): DoorPanel[] {
  const doors = door.quantity * door.leaves;
  const found = new Map<string, { size: Size; count: number }>();
  for (const opening of layOpenings(door)) {
    const size = panelSize(opening, insertion);
    const key = `${size.width.toFixed(6)} ${size.height.toFixed(6)}`;
    const same = found.get(key);
    if (same === undefined) found.set(key, { size, count: 1 });
    else same.count++;
  }
  return [...found.values()].map(({ size, count }) => {
    const volume = panelVolume(size, section);
    return {
      ...size,
      quantity: count * doors,
      grain: door.grain,
      field: fieldOf(size, section.reach),
      volume,
      weight: section.density === null ? null : (volume / 1e9) * section.density,
    };
  });
}

/** Volume of one panel as cut, mm³. */
function panelVolume({ width, height }: Size, { thickness, area, overlap }: PanelSection): number {
  return width * height * thickness - volumeTaken(width, height, area, overlap);
}

/** The flat between the raises; null where they meet. */
function fieldOf({ width, height }: Size, reach: number): Size | null {
  const field = { width: width - 2 * reach, height: height - 2 * reach };
  return field.width > 0 && field.height > 0 ? field : null;
}

/** Width of a panel across its grain, and its length along it. */
export function alongGrain({ width, height, grain }: Pick<DoorPanel, 'width' | 'height' | 'grain'>): {
  readonly across: number;
  readonly length: number;
} {
  return grain === 'up' ? { across: width, length: height } : { across: height, length: width };
}
