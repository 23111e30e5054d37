import { type Box, joinBoxes, loopsBox } from '@fielded/geometry';
import type { Item } from '@fielded/render';
import { PIXELS_PER_MM, type SheetPart } from './framing.ts';
import { dimensionsIn, textsBox } from './mark-dimensions.ts';
import type { ViewScene } from './view-scene.ts';

interface Room {
  readonly width: number;
  readonly height: number;
}

/** Share of the screen's height that the wood has while a figure is typed, and the most of its sheet that it takes. */
const LEAST_SHARE = 1 / 3;
const MOST_OF_SHEET = 0.94;

/** What letters reach beyond their capitals, and a little, paper mm. */
const ROUND_FIGURES = 2.5;

/** Drawings until the wood is as large as wanted: breaks and hatching do not grow with it, so that one is seldom enough. */
const ROUNDS = 4;

/** The drawing so large that its wood is a third of the screen's height, or as much of that as its sheet has; itself where it is. */
export function enlargeWood(
  draw: (scale: number) => ViewScene,
  scene: ViewScene,
  room: Room,
  screenHeight: number,
): ViewScene {
  const wanted = Math.min((screenHeight * LEAST_SHARE) / PIXELS_PER_MM, room.height * MOST_OF_SHEET);
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
 * What is looked at of a drawing that is larger than its room while a size is in hand: the figure of that size, with as
 * much of the tongue in its groove as goes beside it. The wood runs out of the picture at the sides.
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

/**
 * Where a stretch of `room` starts on paper of `size`: what is wanted in its middle, as far as `must` lies in it whole, and
 * nothing beyond the paper where that is larger.
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

function woodBox(items: readonly Item[]): Box | null {
  const boxes = items.flatMap((item) => {
    if (item.kind !== 'group' || (item.key !== 'panel' && item.key !== 'frame')) return [];
    return item.items.flatMap((inner) => (inner.kind === 'path' ? (loopsBox(inner.loops) ?? []) : []));
  });
  return joinBoxes(boxes);
}
