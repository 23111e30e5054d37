import type { Report } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import { loopsBox } from '@fielded/geometry';
import { keepOnly } from './dimension/keep-only.ts';
import { layDimensions } from './dimension/lay-dimensions.ts';
import type { Item, Scene } from './scene.ts';
import { itemsBox, moveItems } from './scene.ts';
import { safeText } from './text/safe-text.ts';
import { sketchJoint } from './views/joint.ts';
import { sketchSection } from './views/section.ts';
import { sayEdge } from './words/english/edge.ts';
import { describe } from './words/title.ts';

/** A drawing to work on: without its foot, and with where the wood lies on the paper. */
export interface LiveScene extends Scene {
  /** The panel's edge at its front face, paper mm. */
  readonly panel: Point;
  /** The frame's sight edge at its front face; null where no frame is drawn. */
  readonly frame: Point | null;
}

export interface LiveOptions {
  readonly view: 'section' | 'joint';
  readonly scale: number;
  /** The values whose dimensions are laid out; null for all. A few are quick enough for every frame of a drag. */
  readonly only: readonly string[] | null;
  /** Keeps a corner of the wood at a place on the paper, so that what does not change stays there; else the margins decide. */
  readonly at?: LivePlace;
}

/** A corner of the wood and its place, paper mm: the panel's edge at its front face, or the frame's sight edge at its own. */
export interface LivePlace extends Point {
  readonly on: 'panel' | 'frame';
}

const MARGIN = 8;
/** What `scene` calls the two drawings. Its table of views is not used, since every view would be loaded with it. */
const TITLES = { section: 'title.section', joint: 'title.joint' } as const;

/**
 * The section or the joint for a screen on which it is changed: the drawing that `scene` gives, without its foot.
 *
 * @throws RangeError unless the scale is above 0.
 */
export function liveScene(report: Report, { view, scale, only, at }: LiveOptions): LiveScene {
  if (!(scale > 0 && Number.isFinite(scale))) throw new RangeError(`scale ${scale}`);
  const sketch = view === 'joint' ? sketchJoint(report, scale, 'all', only) : sketchSection(report, scale);
  const items = layDimensions(keepOnly(sketch, only));
  const box = itemsBox(items)!;
  const frame = frameCorner(items);
  const corner = (at?.on === 'frame' ? frame : null) ?? { x: 0, y: 0 };
  const x = at === undefined ? MARGIN - box.x0 : at.x - corner.x;
  const y = at === undefined ? MARGIN - box.y0 : at.y - corner.y;
  return {
    width: box.x1 - box.x0 + 2 * MARGIN,
    height: box.y1 - box.y0 + 2 * MARGIN,
    scale,
    title: sayEdge(TITLES[view], { job: safeText(report.title) }, report),
    description: only === null ? describe(report, items) : '',
    items: moveItems(items, x, y),
    panel: { x, y },
    frame: frame && { x: frame.x + x, y: frame.y + y },
  };
}

/** Where the frame's sight edge meets its front face, paper mm; null where no frame is drawn. */
function frameCorner(items: readonly Item[]): Point | null {
  const frame = items.find((item) => item.kind === 'group' && item.key === 'frame');
  const wood = frame?.kind === 'group' ? frame.items.find(({ key }) => key === 'wood') : undefined;
  const box = wood?.kind === 'path' ? loopsBox(wood.loops) : null;
  return box && { x: box.x1, y: box.y0 };
}
