import type { Report } from '@fielded/core';
import type { Block, PlacedFigure } from '../document/document.ts';
import { type Item, itemsBox, sceneAround } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { drawClientSection } from './client-section.ts';
import { drawDoorCorner } from './door-corner.ts';
import { drawSizedElevation } from './elevation.ts';
import type { Say, Told } from './quote-told.ts';

/** Widths of the pictures, mm, where they do not have a scale of their own. */
const SECTION_WIDTH = 92;
const CORNER_WIDTH = 66;
/** The most doors that are drawn. */
const MOST_ELEVATIONS = 12;
/** Height of the tallest elevation, mm of paper. */
const ELEVATION_HEIGHT = 67;

/** The pictures of a quote: the section, a corner and the elevations of the doors. */
export function pictureBlocks(report: Report, told: Told): Block[] {
  const { say, length, face } = told;
  const words = {
    frame: say('frame'),
    raise: say('raise'),
    field: say('field'),
    frameThickness: say('frameThickness'),
    panelThickness: say('panelThickness'),
    margin: say('margin'),
    length,
    face,
  };
  const section = fittedScene(say('section'), SECTION_WIDTH, (scale) => drawClientSection(report, scale, words));
  const corner = fittedScene(say('corner'), CORNER_WIDTH, (scale) => drawDoorCorner(report, scale));
  const cuts = [section, corner].filter((figure) => figure !== null);
  return [
    { kind: 'figures', figures: elevations(report, told) },
    ...notAllDrawn(report.doors?.length ?? 0, say),
    { kind: 'figures', figures: cuts },
  ].filter((block) => !('figures' in block) || block.figures.length > 0) as Block[];
}

/** Says that not every door is drawn, where that is so. */
function notAllDrawn(doors: number, say: Say): Block[] {
  if (doors <= MOST_ELEVATIONS) return [];
  return [{ kind: 'paragraph', text: say('someDrawn', { shown: MOST_ELEVATIONS, all: doors }), tone: 'quiet' }];
}

/** Elevations of all doors at one scale, so that their sizes compare; only as many as one can take in. */
function elevations(report: Report, { say, length }: Told): PlacedFigure[] {
  const doors = (report.doors ?? []).slice(0, MOST_ELEVATIONS);
  const tallest = Math.max(...doors.map(({ height, width }) => Math.max(height, width)), 1);
  const parts = [5, 10, 15, 20, 25, 30, 40, 50, 100].find((n) => tallest / n <= ELEVATION_HEIGHT) ?? 200;
  return doors.map(({ name }, i) => ({
    picture: sceneAround(safeText(name), drawSizedElevation(report, 1 / parts, i, length)),
    caption: say('elevation', { name, scale: `1:${parts}` }),
  }));
}

/** A picture scaled to a width; null where there is nothing to draw. */
function fittedScene(caption: string, width: number, drawAt: (scale: number) => Item[]): PlacedFigure | null {
  const trial = itemsBox(drawAt(1));
  if (trial === null) return null;
  const scale = Math.min(2, width / (trial.x1 - trial.x0));
  return { picture: sceneAround(caption, drawAt(scale)), caption };
}
