import type { Plan } from '@fielded/core';
import { sceneToSvg, setUpPicture } from '@fielded/render';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';

/** The picture fills a phone's width at its own size, mm: its figures are then as large as on the paper sheet. */
const ROOM = { width: 88, height: 84 };
const DARK = '(prefers-color-scheme: dark)';

/** The section through table, ring, head, stock and fence, dimensioned from the table and the fence as a rule is laid. */
export function SectionView({ plan, index }: { plan: Plan; index: number }): JSX.Element {
  const desk = useDesk();
  const place = useRef<HTMLElement>(null);
  const report = desk.report.value;
  useEffect(() => {
    const dark = matchMedia(DARK);
    const draw = () => {
      const scene = setUpPicture(report, plan.setups, index, ROOM);
      const svg = sceneToSvg(scene, { theme: dark.matches ? 'dark' : 'light', bare: true });
      // Read as a drawing, not as a page: nothing in it is run.
      place.current?.replaceChildren(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement);
    };
    draw();
    dark.addEventListener('change', draw);
    return () => dark.removeEventListener('change', draw);
  }, [report, plan, index]);
  return <figure class="section-view" ref={place} />;
}
