import type { Item } from '@fielded/render';
import { easing, SVG, Timeline } from '@svgdotjs/svg.js';

import type { Painter } from './painter.ts';
import type { Settling } from './settle.ts';
import { placeOf } from './view-scene.ts';

/** How far before the groove the panel starts, paper mm. */
const BEFORE = 14;
/** How long the panel takes, and how long before its end everything else is shown again, ms. */
const WAY = 1400;
const BACK = 140;

/** A motion that ends where the panel stops, or at once by `finish`. */
export interface Slide {
  finish(): void;
}

/** A settled drawing whose panel can slide. */
interface Sheet extends Settling {
  readonly node: SVGSVGElement;
  readonly drawing: Painter;
}

/** Slides the panel from before the groove to where it stands; null for those who want no motion. */
export function slideIn(sheet: Sheet): Slide | null {
  const { node, settled } = sheet;
  if (settled === null || matchMedia('(prefers-reduced-motion: reduce)').matches) return null;
  const report = sheet.desk.report.peek();
  const { scale, scene } = settled;
  sheet.drawing.paint(hatchThrough(sheet, scene.items));
  const way = scale * Math.min(report.tongue.insertion, report.fit.deepestInsertion ?? 0) + BEFORE;
  const stopped = report.fit.verdict === 'stops-short' || report.fit.verdict === 'will-not-enter';
  const ease = stopped ? easing.bezier(0.3, 0.1, 0.9, 0.6) : easing.bezier(0.3, 0.1, 0.2, 1);
  const timeline = new Timeline();
  const parts = [...node.querySelectorAll<SVGElement>('.ink > *, .grips')].map((part) => ({
    part,
    key: part.getAttribute('data-key'),
  }));
  for (const { part, key } of parts) {
    if (key === 'frame') continue;
    const element = SVG(part).timeline(timeline);
    if (key === 'panel')
      element
        .animate(WAY, 0, 'absolute')
        .ease(ease)
        .during((done: number) => element.attr('transform', `translate(${way * (1 - done)} 0)`));
    else
      element
        .attr('opacity', 0)
        .animate(BACK, WAY - BACK, 'absolute')
        .attr({ opacity: 1 });
  }
  const leave = () => {
    for (const { part } of parts) {
      part.removeAttribute('transform');
      part.removeAttribute('opacity');
    }
    sheet.drawing.paint(scene.items);
  };
  timeline.on('finished', leave);
  return {
    finish() {
      timeline.stop();
      leave();
    },
  };
}

/** The drawing with its wood hatched through: where figures stood, which are gone meanwhile, hatching has gaps. */
function hatchThrough({ draw, desk, settled }: Sheet, items: readonly Item[]): Item[] {
  const bare = draw(desk.report.peek(), settled!.scale, [], placeOf(settled!.scene, 'frame')).items;
  return items.map((item) =>
    item.key === 'panel' || item.key === 'frame' ? (bare.find(({ key }) => key === item.key) ?? item) : item,
  );
}
