import { evaluateJoint, type Report, readJobData } from '@fielded/core';
import type { GroupItem, Item } from '@fielded/render';
import { untracked } from '@preact/signals';
import { G, Svg } from '@svgdotjs/svg.js';
import type { Desk } from '../desk/desk.ts';
import { setAt } from '../job/data.ts';
import { findSize } from '../job/sizes.ts';
import type { OpenDimension } from './dimension-entry.tsx';
import { type Frame, fitScale, frameScene, roomOf } from './framing.ts';
import { createGrips, type Grips } from './grips.ts';
import { findHandles, type Handle } from './handles.ts';
import { markDimensions } from './mark-dimensions.ts';
import { createPainter } from './painter.ts';
import type { Drawer, Spot, ViewScene } from './view-scene.ts';

export interface SheetHooks {
  openDimension(open: OpenDimension): void;
  showReadout(shown: { text: string; x: number; y: number } | null): void;
}

/** A drawing on the screen that follows the desk. */
export interface LiveSheet {
  /** Paints what the desk holds now; within an effect, it is called again at every change. */
  paint(): void;
  resize(): void;
  focusDimension(of: string): void;
  /** Slides the panel into the groove, and stops where it stops. */
  tryFit(): void;
  close(): void;
}

/** How far before the groove a panel stands that is about to be tried, paper mm. */
const BEFORE = 14;
/** How far beyond raise and groove the plain faces are taken hold of, paper mm. */
const BEYOND = 10;

/** What stays put while something is moved: the frame looked through, and where the wood lay in it. */
interface Settled {
  readonly frame: Frame;
  readonly scale: number;
  readonly scene: ViewScene;
}

/** Sets up a live drawing in an svg element inside `box`. */
export function createLiveSheet(
  node: SVGSVGElement,
  box: HTMLElement,
  desk: Desk,
  draw: Drawer,
  hooks: SheetHooks,
): LiveSheet {
  const svg = new Svg(node);
  const root = new G().addTo(svg);
  const layer = (name: string) => new G().attr('class', name).addTo(root);
  const traceLayer = createPainter(layer('trace'));
  const drawing = createPainter(layer('ink'));
  let settled: Settled | null = null;
  let hold: Handle['hold'] = 'panel';
  let shifted: Spot = { x: 0, y: 0 };

  // Asked for while nothing is held: asking at every frame would have the browser lay the page out in the middle of it.
  let size = { width: box.clientWidth, height: box.clientHeight };
  const room = () => roomOf(size.width, size.height);
  const grips: Grips = createGrips(node, root, desk, {
    pixelsPerMm: () => pixels() * (settled?.scale ?? 1),
    take: (handle) => {
      hold = handle.hold;
    },
    showReadout: hooks.showReadout,
    onScreen: ({ x, y }) => ({
      x: (x + shifted.x - settled!.frame.x) * pixels(),
      y: (y + shifted.y - settled!.frame.y) * pixels(),
    }),
  });
  /** Screen pixels of a paper mm. */
  const pixels = () => (settled === null ? 1 : size.width / settled.frame.width);

  const paint = (): void => {
    const report = desk.report.value;
    const moving = desk.moving.value;
    const proposed = proposedReport(desk);
    const trace = proposed ?? desk.trace.value;
    const held = moving !== null && settled !== null;
    if (!held) size = { width: box.clientWidth, height: box.clientHeight };
    if (size.width === 0 || size.height === 0) return;
    if (!held) settled = settle(report, settled?.scale ?? 2);
    const { scale, frame, scene: before } = settled!;
    const scene = held ? draw(report, scale, moving) : settled!.scene;
    const shift = held ? shiftOf(scene[hold] ?? scene.panel, before[hold] ?? before.panel) : { x: 0, y: 0 };
    const natural = scene.panel === null ? scene.height * pixels() : 0;
    const scrolls = natural > size.height + 1;
    box.classList.toggle('scrolls', scrolls);
    node.style.height = scrolls ? `${natural}px` : '';
    svg.attr('viewBox', `${frame.x} ${frame.y} ${frame.width} ${frame.height}`);
    root.attr('transform', `translate(${shift.x} ${shift.y})`);
    shifted = shift;
    drawing.paint(scene.items);
    markDimensions(drawing, scene.items, { open: openDimension, isFixed, perMm: pixels() });
    traceLayer.paint(trace === null ? [] : traceItems(trace, scene.panel, scale));
    const handles = scene.panel ? findHandles(desk.job.value, report, BEYOND / scale, scene.frame !== null) : [];
    grips.place(handles, scene, scale, pixels());
  };

  const settle = (report: Report, start: number): Settled => {
    const { scale, scene } = fitScale((at) => draw(report, at, null), room(), start);
    return { scale, scene, frame: frameScene(scene, scene.panel === null ? roomToScroll(scene) : room()) };
  };

  /** As high as it likes, but no smaller than its letters allow. */
  const roomToScroll = (scene: ViewScene) => {
    const { width, height } = room();
    return { width, height: Math.max(height, (scene.height * width) / Math.max(width, scene.width)) };
  };

  const isFixed = (of: string) => findSize(desk.doc.value.data, desk.job.value, desk.report.value, of).size === null;

  const openDimension = (item: GroupItem): void => {
    const of = item.of ?? '';
    const text = drawing.find('dimensions', item.key)?.querySelector('text');
    const at = (text ?? node).getBoundingClientRect();
    const outer = box.getBoundingClientRect();
    hold = of.startsWith('frame.') ? 'frame' : 'panel';
    hooks.openDimension({
      of,
      mm: item.value ?? 0,
      label: (item.label ?? '').replace(/: [^:]*$/, ''),
      x: at.left + at.width / 2 - outer.left,
      y: at.top + at.height / 2 - outer.top,
    });
  };

  const traceItems = (earlier: Report, panel: Spot | null, scale: number): Item[] => {
    const scene = draw(earlier, scale, []);
    const shift = shiftOf(scene.panel, panel);
    const outlines = scene.items.flatMap((item) =>
      item.kind === 'group' && (item.key === 'panel' || item.key === 'frame')
        ? item.items.flatMap((inner) =>
            inner.kind === 'path' && inner.key === 'outline' ? [{ ...inner, key: item.key }] : [],
          )
        : [],
    );
    const layer = node.querySelector('.trace');
    layer?.setAttribute('transform', `translate(${shift.x} ${shift.y})`);
    return outlines;
  };

  return {
    paint,
    // Held in a hand, nothing moves but what the hand moves.
    resize: () =>
      untracked(() => {
        if (desk.moving.value === null) paint();
      }),
    focusDimension: (of) => node.querySelector<SVGElement>(`[data-of="${CSS.escape(of)}"]`)?.focus(),
    tryFit: () =>
      slideIn(
        node,
        untracked(() => desk.report.value),
        settled?.scale ?? 1,
      ),
    close: () => svg.clear(),
  };
}

/** The joint that a proposal would make. */
function proposedReport({ proposal, doc }: Desk): Report | null {
  if (proposal.value === null) return null;
  const data = proposal.value.reduce((before, [path, value]) => setAt(before, path, value), doc.value.data);
  const { job } = readJobData(data, doc.value.shop?.data);
  return job && evaluateJoint(job);
}

/** From `now` to where it was. */
function shiftOf(now: Spot | null, before: Spot | null): Spot {
  return now && before ? { x: before.x - now.x, y: before.y - now.y } : { x: 0, y: 0 };
}

/** The motion of a try: the panel from before the groove to where it stands. */
function slideIn(node: SVGSVGElement, report: Report, scale: number): void {
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
