import type { Report } from '@fielded/core';
import type { Item } from '@fielded/render';
import { fitScale, scaleWithDimensions } from './framing.ts';
import { isSmallScreen } from './small-screen.ts';
import type { Draw, Fitted, Room } from './view-scene.ts';

/** The least share of its largest scale that the wood keeps beside its dimensions, on a large and on a small screen. */
const LEAST_SHARE = 0.62;
const LEAST_SHARE_SMALL = 0.78;
/** The two used most may leave it this share: a joint without a figure can be neither read nor typed over. */
const LEAST_SHARE_OF_FEW = 0.6;
const FEW = 2;

/** The scale that is tried first. */
const FIRST = 2;

/** Dimensions from the one that is used most to the one that is missed least. */
const ORDER: readonly RegExp[] = [
  /^frame\.groove\.width$/,
  /^fit\.clearance$/,
  /^section\.cuts\[\d+\]\.depthCut$|^cuts\[\d+\]\.depth$/,
  /^tongue\.insertion$/,
  /^panel\./,
  /^cuts\[0\]\.reach$/,
  /^frame\.groove\.depth$/,
  /^frame\.thickness$|^frame\.groove\.setback$/,
];
/** How many kinds of dimensions are tried in turn, before the wood stands alone. */
const STEPS = [8, 5, 3, 2, 1, 0] as const;

/**
 * Fits a drawing into its room. Where all its dimensions would press the wood below its least share, they leave in order
 * of use until it is large enough. `hand` names those in hand: only these stay, whatever the room. Of many cuts in a joint, the
 * narrower ones go without. `start` is the scale that it had before; null for none. Each drawing is a step.
 */
export function* thinOut(
  draw: Draw,
  room: Room,
  start: number | null,
  hand: readonly string[] | null,
  report: Report,
): Generator<void, Fitted> {
  if (hand !== null) return yield* fitDrawing(draw, room, start ?? FIRST, hand);
  const bare = yield* fitDrawing(draw, room, start ?? FIRST, []);
  const whole = yield* fitDrawing(draw, room, start ?? scaleWithDimensions(bare, room), null);
  const spare = bare.scene.frame === null ? [] : narrowerCuts(report);
  const full =
    spare.length === 0 ? whole : yield* fitDrawing(draw, room, start ?? whole.scale, namesWithout(whole, spare));
  const small = isSmallScreen();
  const least = bare.scale * (small ? LEAST_SHARE_SMALL : LEAST_SHARE);
  // A drawing larger than a small screen's sheet would be shrunk, and its letters with it.
  const fits = ({ scene }: Fitted) => !small || (scene.width <= room.width && scene.height <= room.height);
  if (bare.scene.panel === null || (full.scale >= least && fits(full))) return full;
  const all = dimensionNames(full.scene.items);
  for (const step of STEPS) {
    const kinds = ORDER.slice(0, step);
    const tried = yield* fitDrawing(
      draw,
      room,
      start ?? full.scale,
      all.filter((of) => kinds.some((kind) => kind.test(of))),
    );
    const few = step <= FEW && step > 0;
    if (tried.scale >= (few ? bare.scale * LEAST_SHARE_OF_FEW : least) && (few || fits(tried))) return tried;
  }
  return bare;
}

/** So many cuts have room for their sizes at a joint. */
const MOST_CUTS = 4;

/** Of more cuts than a joint has room for, those that are neither the widest nor the deepest of their side. */
function narrowerCuts({ section: { cuts } }: Report): number[] {
  if (cuts.length <= MOST_CUTS) return [];
  return cuts.flatMap(({ side, reach, depthCut }, index) => {
    const beside = cuts.filter((other) => other.side === side);
    const stands = beside.every((other) => other.reach <= reach) || beside.every((other) => other.depthCut <= depthCut);
    return stands ? [] : [index];
  });
}

/** The dimensions of a drawing but those of some cuts, by their numbers. */
function namesWithout({ scene }: Fitted, cuts: readonly number[]): string[] {
  return dimensionNames(scene.items).filter((of) => !cuts.includes(Number(/cuts\[(\d+)\]/.exec(of)?.[1] ?? -1)));
}

/**
 * A drawing with some of its dimensions, fitted into its room from the scale `start`: what is tried for its size alone may lack
 * what does not change that. Each drawing is a step.
 */
export function* fitDrawing(
  draw: Draw,
  room: Room,
  start: number,
  only: readonly string[] | null,
): Generator<void, Fitted> {
  const { scale } = yield* fitScale((scale) => draw(scale, only, true), room, start);
  yield;
  return { scale, scene: draw(scale, only), only };
}

function dimensionNames(items: readonly Item[]): string[] {
  return items.flatMap((item) => {
    if (item.kind !== 'group') return [];
    return item.of === undefined ? dimensionNames(item.items) : [item.of];
  });
}
