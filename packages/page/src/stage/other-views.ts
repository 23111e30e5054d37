import { type DoorReport, type Report, runToEnd } from '@fielded/core';
import { knifeScene, type PlainView, type Scene, scene, seasonScene, spreadScene } from '@fielded/render';
import { doorSize } from '../job/door-sizes.ts';
import { shownDoor } from '../job/shown-door.ts';
import { addDoorSizes } from '../job/sizes.ts';
import { type DrawnBefore, keepDrawn } from './drawn-before.ts';
import { leastPixelsPerMm, pixelsPerMm, roomOf } from './framing.ts';
import { dimensionsIn } from './mark-dimensions.ts';
import { isSmallScreen } from './small-screen.ts';
import { fitDrawing } from './thin-out.ts';
import { type Drawer, isLong, steelOf, type ViewName, type ViewScene, viewsFor } from './view-scene.ts';

// Figures of doors can be typed over as soon as doors are drawn.
addDoorSizes(doorSize);

type Enlarge = NonNullable<Drawer['enlarge']>;

/** What draws a view that is only looked at. */
export function otherDrawer(view: ViewName): Drawer {
  const drawn = keepDrawn<Scene>();
  const isOfDoor = view === 'door' || view === 'panel';
  // Only these have what a drawing for its size alone may lack.
  const draw: Drawer = (report, scale, only, _, plain = false) =>
    drawOther(report, view, scale, { only, plain: plain && isOfDoor }, drawn);
  return isOfDoor ? Object.assign(draw, { enlarge: roomForDoor }) : draw;
}

/** Gives a door's wood room beside its figures: on a small screen the figures leave, on a large one they are made smaller. */
const roomForDoor: Enlarge = (draw, room, fitted) =>
  fitted.only !== null ? fitted : isSmallScreen() ? thinDoor(draw, room, fitted) : enlargeDoor(draw, room, fitted);

/** A door's dimensions from those that are used most; the least share of its largest scale that its wood keeps beside them. */
const ORDER: readonly RegExp[] = [/\](\.panel)?\.(width|height)$/, /opening|head/, /margin|stile|rail/i];
const LEAST_SHARE = 0.3;

/** A door with as many of its figures as leave its wood large enough: those of its own size whatever that takes. */
const thinDoor: Enlarge = (draw, room, fitted) => {
  const fit = (only: readonly string[]) => runToEnd(fitDrawing(draw, room, fitted.scale, only));
  const least = LEAST_SHARE * fit([]).scene.scale;
  let thinned = fitted;
  for (let kinds = ORDER.length; kinds > 0 && thinned.scene.scale < least; kinds--) {
    const all = dimensionsIn(fitted.scene.items).map(({ of }) => of!);
    const left = all.filter((of) => ORDER.slice(0, kinds).some((kind) => kind.test(of)));
    thinned = fit(left);
  }
  return thinned;
};

/** How far letters may be made smaller, and how much larger the wood is then to be worth it. */
const smallerLetters = () => pixelsPerMm() / leastPixelsPerMm();
const WORTH_SMALLER = 1.4;
/** How much larger scales are tried. */
const LARGER = [3, 2.4, 1.8] as const;

/**
 * A door larger than fitted where its figures crowd out its wood: fractions in inches round a narrow one take more of the paper
 * the smaller it is. It is then framed whole, with letters no smaller than they may be.
 */
const enlargeDoor: Enlarge = (draw, room, fitted) => {
  for (const times of LARGER) {
    const scale = fitted.scale * times;
    const { width, height } = draw(scale, null, true);
    const over = Math.max(1, width / room.width, height / room.height);
    if (over <= smallerLetters() && scale / over >= fitted.scale * WORTH_SMALLER)
      return { ...fitted, scale, scene: draw(scale, null), whole: true };
  }
  return fitted;
};

/** The dimensions that a door or its panel has, and whether it is drawn for its size alone. */
interface HowDrawn {
  readonly only: readonly string[] | null;
  readonly plain: boolean;
}

/**
 * A view that is only looked at. A knife and its limiter are always drawn at full size, charts at their own. A door, or its panel,
 * has the dimensions of `only`, of all for null; with several of them it may be larger than its sheet.
 */
function drawOther(
  report: Report,
  view: ViewName,
  scale: number,
  asked: HowDrawn,
  drawn: DrawnBefore<Scene>,
): ViewScene {
  // The door that is drawn may just have been removed: until another view is chosen, the joint stands in its place.
  const there = viewsFor(report).includes(view) ? view : 'joint';
  return { ...sceneOf(report, there, scale, asked, drawn), panel: null, frame: null };
}

/** Room beside a chart, between its axes' ends and the edges of its paper, and the least and the greatest width of a chart, mm. */
const BESIDE_CHART = 60;
const [NARROWEST, WIDEST] = [60, 130];
/** Paper narrower than this has a knife's ordinates under its outline, mm. */
const ROOM_BESIDE = 260;

/** The width of paper that the sheet shows with letters still large enough to be read, mm. */
function paperWidth(long: boolean): number {
  return (document.querySelector('.sheet')?.clientWidth ?? Infinity) / leastPixelsPerMm(long);
}

function sceneOf(report: Report, view: ViewName, scale: number, asked: HowDrawn, drawn: DrawnBefore<Scene>): Scene {
  const steel = steelOf(view, report);
  const paper = paperWidth(isLong(view));
  const across = paper < ROOM_BESIDE ? { across: paper } : {};
  const chart = Math.min(WIDEST, Math.max(NARROWEST, paper - BESIDE_CHART));
  if (steel !== null)
    return drawn(report, [view, across], () =>
      knifeScene({ ...steel, units: report.units, title: report.title, ...across }),
    );
  if (view === 'spread') return drawn(report, [view, chart], () => spreadScene(report, chart));
  if (view === 'season') return drawn(report, [view, chart], () => seasonScene(report, chart));
  if (view === 'cuts' && !isSmallScreen()) return cutsBeside(report, scale, drawn);
  const door = Math.max(0, Math.min(shownDoor.value, (report.doors?.length ?? 1) - 1));
  const shown = report.doors?.[door];
  // With a figure in hand the door is whole, as large as its sheet allows.
  const { only, plain } = asked;
  const inHand = only !== null && only.length < 2;
  const kept = view === 'door' && shown && !inHand ? Math.max(scale, leastScale(shown)) : scale;
  const how = shown && { door, only, ...(plain && { plain }), ...(inHand && { margin: MARGIN_IN_HAND }) };
  const options = { view: view as PlainView, scale: kept, bare: true, ...how };
  return drawn(report, options, () => scene(report, options));
}

/** Empty paper round a door while one of its figures is typed, mm. */
const MARGIN_IN_HAND = 3;
/** The narrowest part of a door that is larger than its sheet is so wide on the screen, pixels. */
const LEAST_PART = 14;
/** A whole door is shown where it has this share of that scale; one much higher than wide, or much wider, scrolls. */
const ENOUGH = 0.5;
/** So many times the sheet is the most that a door takes. */
const MOST_SHEETS = 2.5;
/** What dimensions and margins take of the paper beside a door and under it, mm. */
const ROUND_DOOR = 58;

/** The least scale of a door, 0 for any: its parts and their figures are told apart, and it is not larger than its sheet both ways. */
function leastScale({ width, height, stile, topRail, bottomRail, muntin, midRail, across, up }: DoorReport): number {
  const sheet = document.querySelector('.sheet');
  if (sheet === null) return 0;
  const room = roomOf(sheet.clientWidth, sheet.clientHeight);
  const parts = [stile, topRail, bottomRail, ...(across > 1 ? [muntin] : []), ...(up > 1 ? [midRail] : [])];
  const wanted = LEAST_PART / pixelsPerMm() / Math.min(...parts);
  const fits = [(room.width - ROUND_DOOR) / width, (room.height - ROUND_DOOR) / height];
  if (Math.min(...fits) >= ENOUGH * wanted) return 0;
  const longest = MOST_SHEETS * Math.min(room.width / width, room.height / height);
  return Math.min(wanted, Math.max(...fits), longest);
}

/** A cut is drawn no smaller than this and no larger, paper mm for one of wood: more cuts than the sheet has room for scroll. */
const [LEAST_CUT, MOST_CUT] = [1.5, 2.5];
/** Round the drawing, mm. */
const EDGES = 16;

/** The cuts beside each other, as many as there is room for: as few as fit the sheet's height, with letters of the usual size, or else more of them smaller. */
function cutsBeside(report: Report, scale: number, drawn: DrawnBefore<Scene>): Scene {
  const kept = Math.min(MOST_CUT, Math.max(LEAST_CUT, scale));
  const draw = (width: number) => {
    const options = { view: 'cuts', scale: kept, bare: true, across: width - EDGES } as const;
    return drawn(report, options, () => scene(report, options));
  };
  const sheet = document.querySelector('.sheet');
  const room = roomOf(sheet?.clientWidth ?? Infinity, sheet?.clientHeight ?? Infinity);
  const large = draw(room.width);
  return large.height <= room.height ? large : draw(paperWidth(true));
}
