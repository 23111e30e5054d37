import { type Box, joinBoxes, loopsBox } from '@fielded/geometry';
import type { Item } from '@fielded/render';
import { pixelsPerMm, type SheetPart } from './framing.ts';
import { dimensionsIn, textsBox } from './mark-dimensions.ts';
import type { ViewScene } from './view-scene.ts';

interface Room {
  readonly width: number;
  readonly height: number;
}

/** Share of the screen's height that the wood has while a figure is typed, and the most of its sheet that it takes. */
const LEAST_SHARE = 1 / 3;
const MOST_OF_SHEET = 0.94;

/** Margin round figures, paper mm: how far letters reach beyond their capitals, and a little more. */
const ROUND_FIGURES = 2.5;

/** The most drawings made until the wood is as large as wanted: breaks do not grow with the scale, so that one is seldom enough. */
const ROUNDS = 4;

/** The drawing enlarged until its wood is a third of the screen's height, or as near to that as its sheet allows. */
export function enlargeWood(
  draw: (scale: number) => ViewScene,
  scene: ViewScene,
  room: Room,
  screenHeight: number,
): ViewScene {
  const wanted = Math.min((screenHeight * LEAST_SHARE) / pixelsPerMm(), room.height * MOST_OF_SHEET);
  let larger = scene;
  for (let round = 0; round < ROUNDS; round++) {
    const wood = woodBox(larger.items);
    if (wood === null || wood.y1 - wood.y0 >= wanted) break;
    // Scales go by twentieths: the next one up.
    larger = draw(Math.ceil(((wanted * larger.scale) / (wood.y1 - wood.y0)) * 20) / 20);
  }
  return larger;
}

/**
 * The part of a drawing that is shown while a size is in hand, where the drawing is larger than its room: the figure of that size,
 * with as much of the tongue in its groove as fits beside it. The wood runs out of the picture at the sides.
 */
export function frameHand(scene: ViewScene, room: Room): SheetPart {
  const figures = joinBoxes(dimensionsIn(scene.items).flatMap((item) => textsBox(item) ?? []));
  const wood = woodBox(scene.items);
  const joint = scene.panel && { x0: scene.panel.x, y0: scene.panel.y, x1: scene.panel.x, y1: scene.panel.y };
  return {
    x: startOf([joint, figures], figures, 'x', scene.width, room.width),
    y: startOf([wood, figures], figures, 'y', scene.height, room.height),
    width: room.width,
    height: room.height,
  };
}

/** The same part of a drawing, moved no further than it takes to have the figure in hand in it. */
export function keepFigure(part: SheetPart, scene: ViewScene): SheetPart {
  const figures = joinBoxes(dimensionsIn(scene.items).flatMap((item) => textsBox(item) ?? []));
  if (figures === null) return part;
  const along = (start: number, room: number, first: number, last: number) =>
    Math.min(Math.max(start, last + ROUND_FIGURES - room), first - ROUND_FIGURES);
  return {
    ...part,
    x: along(part.x, part.width, figures.x0, figures.x1),
    y: along(part.y, part.height, figures.y0, figures.y1),
  };
}

/**
 * Where a stretch of `room` starts on paper of `size`, mm: what is wanted lies in its middle, as far as all of `must` lies in it,
 * and it does not reach beyond paper that is larger.
 */
function startOf(
  wanted: readonly (Box | null)[],
  must: Box | null,
  way: 'x' | 'y',
  size: number,
  room: number,
): number {
  const all = joinBoxes(wanted.filter((box) => box !== null));
  if (all === null || size <= room) return (size - room) / 2;
  const ends = ({ x0, x1, y0, y1 }: Box) => (way === 'x' ? [x0, x1] : [y0, y1]) as [number, number];
  const [from, to] = ends(all);
  let start = (from + to - room) / 2;
  if (must !== null) {
    const [first, last] = ends(must);
    start = Math.min(Math.max(start, last + ROUND_FIGURES - room), first - ROUND_FIGURES);
  }
  return Math.min(Math.max(start, 0), size - room);
}

/** The box round the wood of panel and frame, paper mm; null round none. */
function woodBox(items: readonly Item[]): Box | null {
  const boxes = items.flatMap((item) => {
    if (item.kind !== 'group' || (item.key !== 'panel' && item.key !== 'frame')) return [];
    return item.items.flatMap((inner) => (inner.kind === 'path' ? (loopsBox(inner.loops) ?? []) : []));
  });
  return joinBoxes(boxes);
}
