import type { Scene } from '@fielded/render';
import { isSmallScreen } from './small-screen.ts';

/** Part of the sheet that is looked at, paper mm. */
export interface SheetPart {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Screen pixels that a paper mm takes: a figure 3.5 mm high is then easy to read at arm's length. On a small screen the smallest
 * letters, capitals of 2.5 mm, have 12 px; what is `long` is larger instead.
 */
export const pixelsPerMm = (long = false): number => (isSmallScreen() && !long ? 3.37 : 2.95);
/** The same for what is only looked at: the smallest letters on a large screen, or of what is long, are 8 px or more. */
export const leastPixelsPerMm = (long = false): number => (isSmallScreen() && !long ? 3.37 : 2.3);
/** The largest and the smallest scale. */
const LARGEST = 12;
const SMALLEST = 0.01;
/** A smaller scale counts as nearer to fitting only if it cuts the excess to this share: texts beside short lengths may even make a drawing larger. */
const NEARER = 0.92;
/** So many scales are tried. */
const ROUNDS = 4;
/** A drawing that fits is enlarged only by this factor or more: smaller changes would be restless. */
const WORTH_IT = 1.12;

/** Room for a drawing, paper mm, on a part of the screen of a width and height in pixels. */
export function roomOf(width: number, height: number, long = false): { width: number; height: number } {
  const perMm = pixelsPerMm(long);
  return { width: width / perMm, height: height / perMm };
}

/**
 * The scale at which a drawing just fits its room, from `start`; `draw` gives the drawing at a scale.
 *
 * Texts keep their size at every scale, so the drawing does not grow in proportion: each next scale is estimated from the wood's
 * share of the size at the last one. Each drawing is a step.
 */
export function* fitScale<S extends Scene>(
  draw: (scale: number) => S,
  room: { readonly width: number; readonly height: number },
  start: number,
): Generator<void, { readonly scale: number; readonly scene: S }> {
  let scale = start;
  let kept: { scale: number; scene: S } | null = null;
  let nearest: { scale: number; scene: S; over: number } | null = null;
  const tried = new Set<number>();
  for (let round = 0; round < ROUNDS; round++) {
    if (round > 0) yield;
    const scene = draw(scale);
    tried.add(scale);
    const fits = scene.width <= room.width && scene.height <= room.height;
    if (fits && (kept === null || scale > kept.scale)) kept = { scale, scene };
    const over = Math.max(scene.width / room.width, scene.height / room.height);
    if (!fits && (nearest === null || over < nearest.over * NEARER)) nearest = { scale, scene, over };
    const next = nextScale(scene, scale, room);
    // One that was tried leads round to those that were tried after it.
    if (tried.has(next) || (fits && next / scale < WORTH_IT && next > scale)) break;
    scale = next;
  }
  return kept ?? nearest!;
}

/** What dimensions round the wood usually take of the paper, mm across and up. */
const USUAL = { across: 46, up: 50 };

/** The scale at which wood that just fits its room is likely to fit with its dimensions: to be tried first. */
export function scaleWithDimensions(
  { scale, scene }: { readonly scale: number; readonly scene: Scene },
  room: { readonly width: number; readonly height: number },
): number {
  const share = Math.min((room.width - USUAL.across) / scene.width, (room.height - USUAL.up) / scene.height);
  return Math.max(SMALLEST, roundScale(scale * share));
}

/** A scale in steps; whole doors are drawn so small that steps of a twentieth would waste the room or leave it. */
function roundScale(scale: number): number {
  const steps = scale < 0.5 ? 200 : 20;
  return Math.round(scale * steps - 0.3) / steps;
}

/** The part of a drawing's size that is not wood but dimensions and margins, paper mm. */
const TEXTS = 70;

/** The scale at which the drawing would fit, were its texts of fixed size. */
function nextScale(scene: Scene, scale: number, room: { readonly width: number; readonly height: number }): number {
  const share = (size: number, most: number) => {
    const texts = Math.min(TEXTS, size * 0.6);
    return Math.max(0.2, most - texts) / (size - texts);
  };
  const factor = Math.min(share(scene.width, room.width), share(scene.height, room.height));
  return Math.min(LARGEST, Math.max(SMALLEST, roundScale(scale * factor)));
}

/** Frames a drawing in the middle of its room: enlarged by a quarter at most, made smaller where it does not fit. */
export function frameScene(scene: Scene, room: { readonly width: number; readonly height: number }): SheetPart {
  const ratio = room.width / Math.max(1, room.height);
  const width = Math.max(scene.width, scene.height * ratio, Math.min(room.width, scene.width * 1.25));
  const height = width / ratio;
  return { x: (scene.width - width) / 2, y: (scene.height - height) / 2, width, height };
}

/** Room for the buttons to look closer at the sheet's right upper corner, pixels. */
const BUTTONS = 50;
/** How far a drawing may go down into the margin of its own paper at the foot, paper mm. */
const FOOT = 6;

/**
 * The frame with the drawing moved down until its corner is clear of the buttons: as far as there is room under it, or as far as
 * it takes where the drawing `scrolls`.
 */
export function clearButtons(frame: SheetPart, scene: Scene, pixelsWide: number, scrolls: boolean): SheetPart {
  const pixels = pixelsWide / frame.width;
  const top = -frame.y * pixels;
  const beside = pixelsWide - (scene.width - frame.x) * pixels;
  if (beside >= BUTTONS || top >= BUTTONS) return frame;
  const under = Math.max(0, (frame.y + frame.height - scene.height) * pixels);
  const free = under + FOOT * pixels;
  const lower = scrolls ? BUTTONS - top : Math.min(BUTTONS - top, free);
  const longer = scrolls ? Math.max(0, lower - under) : 0;
  return { ...frame, y: frame.y - lower / pixels, height: frame.height + longer / pixels };
}
