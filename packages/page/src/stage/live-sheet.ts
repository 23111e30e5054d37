import { untracked } from '@preact/signals';
import type { Desk } from '../desk/desk.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import { findSize } from '../job/sizes.ts';
import { aloud } from '../words/aloud.ts';
import { goAlongDrawing } from './along-drawing.ts';
import { keepFigure } from './frame-hand.ts';
import { createGrips, type Grips } from './grips.ts';
import { findHandles } from './handles.ts';
import type { Closer } from './look-closer.ts';
import { markDimensions } from './mark-dimensions.ts';
import { createPainter } from './painter.ts';
import { sayDrawn } from './say-drawn.ts';
import { fitAhead, isSettled, nameRoom, settle } from './settle.ts';
import { bringIntoLook, openDimension, pixelsOf, placeOnScreen, type Sheet, type SheetHooks } from './sheet-parts.ts';
import { isSmallScreen } from './small-screen.ts';
import { createGround, createSvg, setIfOther } from './svg-element.ts';
import { type Drawer, placeOf } from './view-scene.ts';

/** A drawing on the screen that follows the desk. */
export interface LiveSheet {
  /** Paints what the desk holds now; within an effect, it is called again at every change. */
  paint(): void;
  resize(): void;
  focusDimension(of: string): void;
  /** Slides the panel into the groove, and stops where it stops. */
  slideIn(): Promise<void>;
  close(): void;
}

/** How far beyond raise and groove the plain faces are taken hold of, paper mm. */
const BEYOND = 10;

/** What a sheet draws, and whether it shows things one under the other. */
interface Drawn {
  readonly draw: Drawer;
  readonly long: boolean;
}

/** Sets up a live drawing in an svg element inside `box`. */
export function createLiveSheet(
  node: SVGSVGElement,
  box: HTMLElement,
  desk: Desk,
  { draw, long }: Drawn,
  closer: Closer,
  hooks: SheetHooks,
): LiveSheet {
  const root = node.appendChild(createSvg('g'));
  root.append(createGround());
  const layer = (name: string) => root.appendChild(createSvg('g', { class: name }));
  const sheet: Sheet = {
    node,
    box,
    desk,
    draw,
    long,
    closer,
    hooks,
    behind: layer('trace'),
    trace: null,
    drawing: createPainter(layer('ink')),
    root,
    along: goAlongDrawing(box),
    slide: null,
    settled: null,
    ahead: null,
    hold: 'panel',
    size: { width: box.clientWidth, height: box.clientHeight },
  };
  const grips = createGrips(node, root, desk, {
    pixelsPerMm: () => pixelsOf(sheet) * (sheet.settled?.scale ?? 1),
    take: (handle) => {
      sheet.hold = handle.hold;
    },
    showReadout: hooks.showReadout,
    onScreen: (spot) => placeOnScreen(sheet, spot),
  });
  const stopListening = closer.listen(node, () => desk.moving.peek() !== null);
  const lookAt = ({ target }: FocusEvent) => bringIntoLook(sheet, target as Element);
  box.addEventListener('focusin', lookAt);
  const ready = () => fitAhead(sheet);
  desk.beforeRest.add(ready);
  return {
    paint: () => paint(sheet, grips),
    // Held in a hand, nothing moves but what the hand moves.
    resize: () => untracked(() => desk.moving.value === null && !isAsPainted(sheet) && paint(sheet, grips)),
    focusDimension: (of) => goBackTo(node, of),
    slideIn: () => slideIn(sheet),
    close() {
      desk.beforeRest.delete(ready);
      stopListening();
      sheet.along.close();
      box.removeEventListener('focusin', lookAt);
      root.remove();
    },
  };
}

function paint(sheet: Sheet, grips: Grips): void {
  const { desk, box, node, drawing } = sheet;
  sheet.slide?.finish();
  const report = desk.report.value;
  const moving = desk.moving.value;
  const typing = desk.typing.value;
  const hand = typing !== null && isSmallScreen() ? typing : null;
  const held = moving !== null && sheet.settled !== null;
  // What is typed stays where it is looked at; the other part gives way.
  if (hand !== null) sheet.hold = hand.some((of) => of.startsWith('frame.')) ? 'frame' : 'panel';
  box.classList.toggle('held', held);
  if (!held) sheet.size = { width: box.clientWidth, height: box.clientHeight };
  if (sheet.size.width === 0 || sheet.size.height === 0) return;

  // The scale changes only when the hand lets go, or when another size is taken in hand.
  const of = nameRoom(sheet.size, report, hand);
  const stays = held || (hand !== null && sheet.settled?.of === of);
  if (!stays && !isSettled(sheet, of, desk.job.value)) sheet.settled = settle(sheet, of, hand);
  const { scale, scene: before, only } = sheet.settled!;
  const scene = stays ? sheet.draw(report, scale, held ? moving : only, placeOf(before, sheet.hold)) : before;

  if (stays && hand !== null && scene.panel !== null)
    sheet.settled = { ...sheet.settled!, frame: keepFigure(sheet.settled!.frame, scene) };
  const frame = sheet.closer.within(sheet.settled!.frame);
  const { frame: whole, across } = sheet.settled!;
  const wide = across > sheet.size.width + 1;
  const natural = scene.panel === null ? whole.height * (across / whole.width) : 0;
  const scrolls = wide || natural > sheet.size.height + 1;
  node.classList.toggle('closer', sheet.closer.look.value.times > 1);
  if (!held) {
    box.classList.toggle('scrolls', scrolls);
    node.style.height = scrolls ? `${natural}px` : '';
    node.style.width = wide ? `${across}px` : '';
  }
  setIfOther(node, 'viewBox', `${frame.x} ${frame.y} ${frame.width} ${frame.height}`);

  const perMm = pixelsOf(sheet);
  drawing.paint(scene.items);
  markDimensions(drawing, scene.items, {
    open: (item) => openDimension(sheet, item),
    isFixed: isFixedOn(desk),
    perMm,
    held,
  });
  if (!held) setIfOther(node, 'aria-description', aloud(scene.panel ? sayDrawn(report, scene) : scene.description));
  if (sheet.trace !== null) sheet.trace.paint(scene, scale);
  else if (desk.proposal.value !== null || desk.trace.value !== null)
    void attempt(desk, async () => {
      const { createTrace } = await fetchPart(() => import('./trace.ts'));
      sheet.trace ??= createTrace(sheet.behind, desk, sheet.draw);
      untracked(() => paint(sheet, grips));
    });
  const handles = scene.panel ? findHandles(desk.job.value, report, BEYOND / scale, scene.frame !== null) : [];
  grips.place(handles, scene, scale, perMm, held);
  if (!held) sheet.along.mark();
}

/** Whether the box is as large as it was painted for: who begins to watch it is told of it once, however that is. */
function isAsPainted({ box, size }: Sheet): boolean {
  return size.width === box.clientWidth && size.height === box.clientHeight;
}

/** The motion is fetched when it is first asked for. */
async function slideIn(sheet: Sheet): Promise<void> {
  await attempt(sheet.desk, async () => {
    const { slideIn } = await fetchPart(() => import('./slide-in.ts'));
    sheet.slide?.finish();
    sheet.slide = slideIn(sheet);
  });
}

/** Gives the focus back to a dimension; to another one, where there is no room for it any more. */
function goBackTo(node: SVGSVGElement, of: string): void {
  const same = node.querySelector<SVGElement>(`[data-of="${CSS.escape(of)}"]`);
  (same ?? node.querySelector<SVGElement>('.dimension[tabindex="0"]'))?.focus();
}

function isFixedOn(desk: Desk): (of: string) => boolean {
  return (of) => findSize(desk.doc.value.data, desk.job.value, desk.report.value, of).size === null;
}
