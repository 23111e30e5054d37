import { type Job, type Report, runToEnd } from '@fielded/core';
import type { Desk } from '../desk/desk.ts';
import { enlargeWood, frameHand } from './frame-hand.ts';
import { clearButtons, frameScene, leastPixelsPerMm, roomOf, type SheetPart } from './framing.ts';
import { isSmallScreen, seenHeight } from './small-screen.ts';
import { thinOut } from './thin-out.ts';
import type { Draw, Drawer, Fitted } from './view-scene.ts';

/** What stays put while something is moved or typed: the frame looked through, and where the wood lay in it. */
export interface Settled extends Fitted {
  readonly frame: SheetPart;
  /** Screen pixels that the frame takes across. */
  readonly across: number;
  /** What it was settled for: the room and what was in hand, and the job. */
  readonly of: string;
  readonly job: Job;
}

/** A drawing that settles in its room. */
export interface Settling {
  readonly desk: Desk;
  readonly draw: Drawer;
  readonly long: boolean;
  settled: Settled | null;
  /** What was fitted before the hand let go, and for which room and job. */
  ahead: { readonly of: string; readonly job: Job; readonly fitted: Fitted } | null;
  // Asked for while nothing is held: asking at every frame would have the browser lay the page out in the middle of it.
  size: { width: number; height: number };
}

/** Tells rooms for a drawing apart, and what is in hand. */
export function nameRoom(
  { width, height }: Settling['size'],
  { units }: Report,
  hand: readonly string[] | null,
): string {
  return `${width} ${height} ${units} ${hand?.join(' ') ?? ''}`;
}

/** Whether this job was settled in this room: a report that says more of the same joint has it drawn no other way. */
export function isSettled({ settled }: Settling, of: string, job: Job): boolean {
  return settled !== null && settled.scene.panel !== null && settled.of === of && settled.job === job;
}

/** Fits the drawing into its room while a hand still holds it, in steps, so that it settles at once when the hand has let go. */
export function* fitAhead(sheet: Settling): Generator<void, void> {
  const report = sheet.desk.report.peek();
  const of = nameRoom(sheet.size, report, null);
  const job = sheet.desk.job.peek();
  // A hand that pressed and moved nothing leaves nothing to fit.
  if (isSettled(sheet, of, job)) return;
  sheet.ahead = { of, job, fitted: yield* fitIn(sheet, report, null) };
}

function* fitIn(sheet: Settling, report: Report, hand: readonly string[] | null): Generator<void, Fitted> {
  const draw: Draw = (scale, only, plain) => sheet.draw(report, scale, only, undefined, plain);
  const room = roomFor(sheet);
  // What is only looked at is not moved by hand: it is fitted in the same way each time.
  const start = sheet.settled?.scene.panel ? sheet.settled.scale : null;
  const fitted = yield* thinOut(draw, room, start, hand, report);
  return sheet.draw.enlarge?.(draw, room, fitted) ?? fitted;
}

/** Paper mm that a drawing may take; what is long may be as high as it likes on a small screen. */
function roomFor({ size, long }: Settling): { readonly width: number; readonly height: number } {
  const room = roomOf(size.width, size.height, long);
  return long && isSmallScreen() ? { ...room, height: Number.POSITIVE_INFINITY } : room;
}

/** Fits the drawing into its room, unless that was done ahead, and frames it there. */
export function settle(sheet: Settling, of: string, hand: readonly string[] | null): Settled {
  const { draw, desk, size, ahead } = sheet;
  const report = desk.report.value;
  const job = desk.job.value;
  const room = roomFor(sheet);
  const known = hand === null && ahead?.of === of && ahead.job === job;
  const fitted = known ? ahead.fitted : runToEnd(fitIn(sheet, report, hand));
  sheet.ahead = null;
  const { scene } = fitted;
  if (hand !== null && scene.panel !== null) {
    const larger = enlargeWood((scale) => draw(report, scale, hand), scene, room, seenHeight());
    if (larger !== scene)
      return {
        ...fitted,
        scale: larger.scale,
        scene: larger,
        of,
        job,
        frame: frameHand(larger, room),
        across: size.width,
      };
  }
  // What is only looked at is as high as it likes, but no smaller than its letters allow.
  const seen = roomOf(size.width, size.height, sheet.long);
  const tall = {
    ...seen,
    height: Math.max(seen.height, (scene.height * seen.width) / Math.max(seen.width, scene.width)),
  };
  if (scene.panel !== null) {
    const frame = clearButtons(frameScene(scene, room), scene, size.width, false);
    return { ...fitted, of, job, frame, across: size.width };
  }
  const framed = frameScene(scene, fitted.whole ? seen : tall);
  const perMm = leastPixelsPerMm(sheet.long);
  const across = Math.max(size.width, framed.width * perMm);
  // One that scrolls to the side is no higher than it needs.
  const height = across > size.width ? Math.max(scene.height, size.height / perMm) : framed.height;
  const frame = { ...framed, y: (scene.height - height) / 2, height };
  return {
    ...fitted,
    of,
    job,
    frame: clearButtons(frame, scene, across, !fitted.whole && scene.height > seen.height + 0.01),
    across,
  };
}
