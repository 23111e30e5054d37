import type { Report } from '@fielded/core';
import { easing, SVG, Timeline } from '@svgdotjs/svg.js';

/** How far before the groove the panel starts, paper mm. */
const BEFORE = 14;
/** How long the panel takes, and how long before its end everything else is shown again, ms. */
const WAY = 1400;
const BACK = 140;

/** A motion that ends where the panel stops, or at once by `finish`. */
export interface Slide {
  finish(): void;
}

/** Slides the panel from before the groove to where it stands; null for those who want no motion. */
export function slideIn(node: SVGSVGElement, report: Report, scale: number): Slide | null {
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return null;
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
  };
  timeline.on('finished', leave);
  return {
    finish() {
      timeline.stop();
      leave();
    },
  };
}
