import type { Plan } from '@fielded/core';
import { sceneToSvg, setUpPicture } from '@fielded/render';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';

/** The room that the picture is laid out in, paper mm: shown at four fifths on a phone, its figures can still be read. */
const ROOM = { width: 116, height: 120 };
/** On paper it is drawn as in the light. */
const DARK = 'screen and (prefers-color-scheme: dark)';

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
      // Parse it as a drawing, not as a page, so that nothing in it is run.
      place.current?.replaceChildren(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement);
    };
    draw();
    dark.addEventListener('change', draw);
    return () => dark.removeEventListener('change', draw);
  }, [report, plan, index]);
  return <figure class="section-view" ref={place} />;
}
