import type { Report } from '@fielded/core';
import { knifeScene, type PlainView, scene, seasonScene, spreadScene } from '@fielded/render';
import { doorSize } from '../job/door-sizes.ts';
import { shownDoor } from '../job/shown-door.ts';
import { addDoorSizes } from '../job/sizes.ts';
import { LEAST_PIXELS_PER_MM, PIXELS_PER_MM, roomOf } from './framing.ts';
import { isSmallScreen } from './small-screen.ts';
import { type Drawer, steelOf, type ViewName, type ViewScene, viewsFor } from './view-scene.ts';

// Figures of doors can be typed over as soon as doors are drawn.
addDoorSizes(doorSize);

/** What draws a view that is only looked at. */
export function otherDrawer(view: ViewName): Drawer {
  const draw: Drawer = (report, scale) => drawOther(report, view, scale);
  return view === 'door' || view === 'panel' ? Object.assign(draw, { enlarge: enlargeDoor }) : draw;
}

/** How far letters may be made smaller, and how much larger the wood is then to be worth it. */
const SMALLER_LETTERS = PIXELS_PER_MM / LEAST_PIXELS_PER_MM;
const WORTH_SMALLER = 1.4;
/** How much larger scales are tried. */
const LARGER = [3, 2.4, 1.8] as const;

/**
 * A door larger than fitted where its figures crowd out its wood: fractions in inches round a narrow one take more of the paper
 * the smaller it is. It is then framed whole, with letters no smaller than they may be.
 */
const enlargeDoor: Drawer['enlarge'] = (draw, room, fitted) => {
  for (const times of LARGER) {
    const scale = fitted.scale * times;
    const scene = draw(scale, null);
    const over = Math.max(1, scene.width / room.width, scene.height / room.height);
    if (over <= SMALLER_LETTERS && scale / over >= fitted.scale * WORTH_SMALLER)
      return { ...fitted, scale, scene, whole: true };
  }
  return fitted;
};

/** A knife and its limiter are always drawn at full size, charts at their own. */
function drawOther(report: Report, view: ViewName, scale: number): ViewScene {
  // The door that is drawn may just have been removed: until another view is chosen, the joint stands in its place.
  const there = viewsFor(report).includes(view) ? view : 'joint';
  return { ...sceneOf(report, there, scale), panel: null, frame: null };
}

/** Room beside a chart, between its axes' ends and the edges of its paper, and the least and the greatest width of a chart, mm. */
const BESIDE_CHART = 60;
const [NARROWEST, WIDEST] = [70, 130];
/** Paper narrower than this has a knife's ordinates under its outline, mm. */
const ROOM_BESIDE = 260;

/** The width of paper that the sheet shows with letters still large enough to be read, mm. */
function paperWidth(): number {
  return (document.querySelector('.sheet')?.clientWidth ?? Infinity) / LEAST_PIXELS_PER_MM;
}

function sceneOf(report: Report, view: ViewName, scale: number) {
  const steel = steelOf(view, report);
  const paper = paperWidth();
  const across = paper < ROOM_BESIDE ? { across: paper } : {};
  const chart = Math.min(WIDEST, Math.max(NARROWEST, paper - BESIDE_CHART));
  if (steel !== null) return knifeScene({ ...steel, units: report.units, title: report.title, ...across });
  if (view === 'spread') return spreadScene(report, chart);
  if (view === 'season') return seasonScene(report, chart);
  if (view === 'cuts' && !isSmallScreen()) return cutsBeside(report, scale);
  const door = Math.max(0, Math.min(shownDoor.value, (report.doors?.length ?? 1) - 1));
  return scene(report, { view: view as PlainView, scale, bare: true, ...(report.doors?.length && { door }) });
}

/** A cut is drawn no smaller than this and no larger, paper mm for one of wood: more cuts than the sheet has room for scroll. */
const [LEAST_CUT, MOST_CUT] = [1.5, 2.5];
/** Round the drawing, mm. */
const EDGES = 16;

/** The cuts beside each other, as many as there is room for: as few as fit the sheet's height, with letters of the usual size, or else more of them smaller. */
function cutsBeside(report: Report, scale: number) {
  const kept = Math.min(MOST_CUT, Math.max(LEAST_CUT, scale));
  const draw = (width: number) => scene(report, { view: 'cuts', scale: kept, bare: true, across: width - EDGES });
  const sheet = document.querySelector('.sheet');
  const room = roomOf(sheet?.clientWidth ?? Infinity, sheet?.clientHeight ?? Infinity);
  const large = draw(room.width);
  return large.height <= room.height ? large : draw(paperWidth());
}
