import type { GroupItem } from '@fielded/render';
import type { AlongDrawing } from './along-drawing.ts';
import type { OpenDimension } from './dimension-entry.tsx';
import type { Handle } from './handles.ts';
import type { Closer } from './look-closer.ts';
import type { Painter } from './painter.ts';
import type { Settling } from './settle.ts';
import type { Slide } from './slide-in.ts';
import type { Trace } from './trace.ts';
import type { Spot } from './view-scene.ts';

export interface SheetHooks {
  openDimension(open: OpenDimension): void;
  showReadout(shown: { text: string; x: number; y: number } | null): void;
}

/** The parts of a live drawing, and what it remembers from one painting to the next. */
export interface Sheet extends Settling {
  readonly node: SVGSVGElement;
  readonly box: HTMLElement;
  readonly closer: Closer;
  readonly hooks: SheetHooks;
  /** The layer behind the drawing, and what paints it: null until something is drawn there. */
  readonly behind: SVGGElement;
  trace: Trace | null;
  readonly drawing: Painter;
  readonly along: AlongDrawing;
  readonly root: SVGGElement;
  /** The motion of a try, while it goes on. */
  slide: Slide | null;
  hold: Handle['hold'];
}

/** While a part of the drawing is looked at closer, what keys go to is brought into it. */
export function bringIntoLook({ closer, node }: Sheet, element: Element): void {
  if (closer.look.peek().times === 1 || !element.matches(':focus-visible')) return;
  const at = (element.querySelector('.target, .finger') ?? element).getBoundingClientRect();
  const outer = node.getBoundingClientRect();
  closer.bring(
    (at.left + at.width / 2 - outer.left) / outer.width,
    (at.top + at.height / 2 - outer.top) / outer.height,
  );
}

/** Screen pixels of a paper mm. */
export function pixelsOf({ settled, closer }: Sheet): number {
  return settled === null ? 1 : (settled.across / settled.frame.width) * closer.look.value.times;
}

export function placeOnScreen(sheet: Sheet, { x, y }: Spot): Spot {
  const frame = sheet.closer.within(sheet.settled!.frame);
  const pixels = pixelsOf(sheet);
  return { x: (x - frame.x) * pixels, y: (y - frame.y) * pixels };
}

/** Asks for a dimension that was tapped as a field, where its figure stands on the screen. */
export function openDimension(sheet: Sheet, item: GroupItem): void {
  const of = item.of ?? '';
  const text = sheet.drawing.find('dimensions', item.key)?.querySelector('text');
  const at = (text ?? sheet.node).getBoundingClientRect();
  const outer = sheet.box.getBoundingClientRect();
  sheet.hold = of.startsWith('frame.') ? 'frame' : 'panel';
  sheet.hooks.openDimension({
    of,
    mm: item.value ?? 0,
    label: (item.label ?? '').replace(/: [^:]*$/, ''),
    x: at.left + at.width / 2 - outer.left,
    y: at.top + at.height / 2 - outer.top,
  });
}
