import type { Report } from '@fielded/core';

/** How far before the groove a panel stands that is about to be tried, paper mm. */
const BEFORE = 14;

/** The motion of a try: the panel from before the groove to where it stands. None for those who want no motion. */
export function slideIn(node: SVGSVGElement, report: Report, scale: number): void {
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
  const way = scale * Math.min(report.tongue.insertion, report.fit.deepestInsertion ?? 0) + BEFORE;
  const stopped = report.fit.verdict === 'stops-short' || report.fit.verdict === 'will-not-enter';
  const timing = { duration: 1400, easing: stopped ? 'cubic-bezier(.3,.1,.9,.6)' : 'cubic-bezier(.3,.1,.2,1)' };
  const slide = [{ transform: `translate(${way}px, 0)` }, { transform: 'translate(0, 0)' }];
  const fade = [{ opacity: 0 }, { opacity: 0, offset: 0.9 }, { opacity: 1 }];
  for (const part of node.querySelectorAll('.ink > *')) {
    const key = part.getAttribute('data-key');
    if (key === 'frame') continue;
    part.animate(key === 'panel' ? slide : fade, timing);
  }
  for (const grip of node.querySelectorAll('.grips')) grip.animate(fade, timing);
}
