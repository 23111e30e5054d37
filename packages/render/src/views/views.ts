import type { Report } from '@fielded/core';
import { keepOnly } from '../dimension/keep-only.ts';
import type { Room } from '../dimension/lay-within.ts';
import { layWithin } from '../dimension/lay-within.ts';
import type { Item } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { sayEdge } from '../words/english/edge.ts';
import { sayView } from '../words/english/view.ts';
import { sketchCorner } from './corner.ts';
import { drawCuts } from './cuts.ts';
import { sketchDetail } from './detail.ts';
import { sketchDoor } from './door.ts';
import { drawGrain, noGrain } from './grain.ts';
import { sketchJoint } from './joint.ts';
import { sketchPanel } from './panel.ts';
import { sketchSection } from './section.ts';
import { copeSentence, countOfDoors, countOfPanels, fitNotes, tongueNote } from './view-notes.ts';

/** The drawings of one thing each; `door` and `panel` need doors in the job, `corner` rails that are coped to a sticking. */
export type PlainView = 'section' | 'joint' | 'detail' | 'cuts' | 'corner' | 'panel' | 'door';

/** Every view in the order it is offered, and what it shows in one line: lists of views elsewhere come from this one. */
export const VIEW_WORDS: Readonly<Record<PlainView, string>> = {
  joint: "the panel in the frame's groove",
  section: "the panel's edge by itself",
  detail: 'tongue and groove enlarged, with what is free on all sides',
  cuts: 'what each cut takes, in running order, as the panel lies',
  corner: 'stile and rail, closed: the sticking in its cope, the stub tenon in the groove',
  panel: "the front of a door's panel",
  door: 'the front of a door',
};

/** How a view is laid out: see `ViewEntry.draw`. */
interface Layout {
  readonly across: number | undefined;
  readonly only: readonly string[] | null;
  readonly plain: boolean;
}

/** One kind of drawing. */
interface ViewEntry {
  /** What it is, as a caption, and as what the whole drawing is called, after the job. */
  readonly name: (report: Report, door: number) => string;
  readonly title: (report: Report, door: number) => string;
  /**
   * Laid out at a scale; broken where it would not fit the room. `door` counts from 0. What is of several pieces stands in as
   * many columns as fit `across`, mm; a door has the dimensions of the values of `only`, of all for null, and no grain where it is `plain`.
   */
  readonly draw: (report: Report, scale: number, door: number, room: Room | null, how?: Partial<Layout>) => Item[];
  /** The scales it is drawn at, the largest that suits first; see `usualScale`. */
  readonly scales: readonly number[];
  /** The smallest scale at which it still shows what it is for. */
  readonly least: number;
  /** Its size in wood mm that has to fit, for choosing a scale. */
  readonly extent: (report: Report, door: number) => number;
  /** What else is worth knowing, as sentences. */
  readonly notes: (report: Report, door: number) => readonly string[];
}

/** How large a drawing may be on free paper, mm. */
const FREE = 220;

const grooveExtent = ({ frame }: Report) => frame.groove.depth + 8;
const edgeExtent = ({ section }: Report) => section.width / 2;
const doorExtent = (report: Report, door: number) =>
  Math.max(report.doors?.[door]?.width ?? 0, report.doors?.[door]?.height ?? 0);

/** The names of a view that is the same of every job. */
function named(view: 'section' | 'detail' | 'cuts' | 'corner'): Pick<ViewEntry, 'name' | 'title'> {
  return {
    name: (report) => sayView(`view.${view}`, {}, report),
    title: (report) => {
      const job = safeText(report.title);
      return view === 'section' ? sayEdge('title.section', { job }, report) : sayView(`title.${view}`, { job }, report);
    },
  };
}

/** The names of a view of one of the job's doors. */
function namedOfDoor(view: 'panel' | 'door'): Pick<ViewEntry, 'name' | 'title'> {
  const doorOf = (report: Report, door: number) => safeText(report.doors?.[door]?.name ?? '');
  return {
    name: (report, door) => sayView(`view.${view}`, { door: doorOf(report, door) }, report),
    title: (report, door) =>
      sayView(`title.${view}`, { job: safeText(report.title), door: doorOf(report, door) }, report),
  };
}

export const VIEWS: Readonly<Record<PlainView, ViewEntry>> = {
  section: {
    ...named('section'),
    draw: (report, scale, _, room) => layWithin(sketchSection(report, scale), room),
    scales: [2, 1],
    least: 0.1,
    extent: edgeExtent,
    notes: tongueNote,
  },
  joint: {
    name: (report) => sayView(report.doors?.length ? 'view.joint.doors' : 'view.joint', {}, report),
    title: (report) => {
      const job = safeText(report.title);
      return report.doors?.length
        ? sayView('title.joint.doors', { job }, report)
        : sayEdge('title.joint', { job }, report);
    },
    draw: (report, scale, _, room) => layWithin(sketchJoint(report, scale), room),
    scales: [2, 1],
    least: 0.1,
    extent: edgeExtent,
    notes: fitNotes,
  },
  detail: {
    ...named('detail'),
    draw: (report, scale, _, room) => layWithin(sketchDetail(report, scale), room),
    scales: [10, 5],
    least: 2,
    extent: grooveExtent,
    notes: fitNotes,
  },
  cuts: {
    ...named('cuts'),
    draw: (report, scale, _, room, how) => drawCuts(report, scale, room, how?.across),
    scales: [2, 1],
    least: 0.1,
    extent: edgeExtent,
    notes: tongueNote,
  },
  corner: {
    ...named('corner'),
    draw: (report, scale, _, room) => layWithin(sketchCorner(report, scale), room),
    scales: [2, 1],
    least: 0.5,
    extent: grooveExtent,
    notes: (report) => [copeSentence(report)],
  },
  panel: {
    ...namedOfDoor('panel'),
    draw: (report, scale, door, room, { only = null, plain = false } = {}) =>
      layWithin(keepOnly(sketchPanel(report, scale, door, 0, plain ? noGrain : drawGrain), only), room),
    scales: [1, 0.5, 0.2, 0.1, 0.05, 0.02],
    least: 0.01,
    extent: doorExtent,
    notes: (report, door) => [countOfPanels(report, door)],
  },
  door: {
    ...namedOfDoor('door'),
    draw: (report, scale, door, room, { only = null, plain = false } = {}) =>
      layWithin(keepOnly(sketchDoor(report, scale, door, plain ? noGrain : drawGrain), only), room),
    scales: [1, 0.5, 0.2, 0.1, 0.05, 0.02],
    least: 0.01,
    extent: doorExtent,
    notes: (report, door) => [countOfDoors(report, door)],
  },
};

/** The scale that a view is drawn at unless told: the largest of its usual ones at which it stays within 220 mm or so. */
export function usualScale(view: PlainView, report: Report, door: number): number {
  const { scales, extent } = VIEWS[view];
  return scales.find((scale) => extent(report, door) * scale <= FREE) ?? scales[scales.length - 1]!;
}

/** The views that can be drawn of a report. */
export function viewsOf(report: Report): PlainView[] {
  return (Object.keys(VIEWS) as PlainView[]).filter((view) =>
    view === 'corner'
      ? report.frame.cope !== undefined
      : !(view === 'door' || view === 'panel') || report.doors?.length,
  );
}
