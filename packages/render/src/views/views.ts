import { formatLength, type Report } from '@fielded/core';
import type { Room } from '../dimension/lay-within.ts';
import { layWithin } from '../dimension/lay-within.ts';
import type { Item } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { facesSentence, tongueSentence } from '../words/verdict.ts';
import { sketchCorner } from './corner.ts';
import { drawCuts } from './cuts.ts';
import { sketchDetail } from './detail.ts';
import { sketchDoor } from './door.ts';
import { sketchJoint } from './joint.ts';
import { sketchPanel } from './panel.ts';
import { sketchSection } from './section.ts';

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

/** One kind of drawing. */
interface ViewEntry {
  /** What it is, for the title. */
  readonly name: (report: Report, door: number) => string;
  /** Laid out at a scale; broken where it would not fit the room. `door` counts from 0. */
  readonly draw: (report: Report, scale: number, door: number, room: Room | null) => Item[];
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
const POSE = "Drawn with the tongue hard against the groove's front wall.";
/** How the tongue stands in the groove as drawn; '' where it does not go in. */
export const poseNote = (report: Report): string => (report.fit.frontFace === null ? '' : POSE);
const fitNotes = (report: Report) => [tongueSentence(report), facesSentence(report), poseNote(report)].filter(Boolean);
const tongueNote = (report: Report) => [tongueSentence(report)];

export const VIEWS: Readonly<Record<PlainView, ViewEntry>> = {
  section: {
    name: () => 'Section of the panel',
    draw: (report, scale, _, room) => layWithin(sketchSection(report, scale), room),
    scales: [2, 1],
    least: 0.1,
    extent: edgeExtent,
    notes: tongueNote,
  },
  joint: {
    name: ({ doors }) => (doors?.length ? 'Joint in section A–A' : 'Joint in section'),
    draw: (report, scale, _, room) => layWithin(sketchJoint(report, scale), room),
    scales: [2, 1],
    least: 0.1,
    extent: edgeExtent,
    notes: fitNotes,
  },
  detail: {
    name: () => 'Tongue and groove',
    draw: (report, scale, _, room) => layWithin(sketchDetail(report, scale), room),
    scales: [10, 5],
    least: 2,
    extent: grooveExtent,
    notes: fitNotes,
  },
  cuts: {
    name: () => 'The cuts in running order',
    draw: (report, scale, _, room) => drawCuts(report, scale, room),
    scales: [2, 1],
    least: 0.1,
    extent: edgeExtent,
    notes: tongueNote,
  },
  corner: {
    name: () => 'Stile and rail',
    draw: (report, scale, _, room) => layWithin(sketchCorner(report, scale), room),
    scales: [2, 1],
    least: 0.5,
    extent: grooveExtent,
    notes: (report) => [copeSentence(report)],
  },
  panel: {
    name: (report, door) => `Panel of door ${doorName(report, door)}`,
    draw: (report, scale, door, room) => layWithin(sketchPanel(report, scale, door), room),
    scales: [1, 0.5, 0.2, 0.1, 0.05, 0.02],
    least: 0.01,
    extent: doorExtent,
    notes: (report, door) => [countOfPanels(report, door)],
  },
  door: {
    name: (report, door) => `Door ${doorName(report, door)}`,
    draw: (report, scale, door, room) => layWithin(sketchDoor(report, scale, door), room),
    scales: [1, 0.5, 0.2, 0.1, 0.05, 0.02],
    least: 0.01,
    extent: doorExtent,
    notes: (report, door) => [countOfDoors(report, door)],
  },
};

/** Whether the rails' ends close on the sticking, and what is dashed. */
export function copeSentence({ frame, units }: Report): string {
  const { cope } = frame;
  if (cope === undefined) return '';
  const closes =
    cope.gap < 0.005 ? 'Closes all along.' : `Up to ${formatLength(cope.gap, units)} stays open along the line.`;
  return `${closes} Panel behind dashed.`;
}

function countOfDoors({ doors, units }: Report, index: number): string {
  const door = doors?.[index];
  if (door === undefined) return '';
  const plain = (mm: number) => formatLength(mm, units, 1).replace(` ${units}`, '');
  const panels = door.panels.map(({ width, height }) => `${plain(width)} × ${plain(height)}`);
  const shown = panels.length > 3 ? [...panels.slice(0, 3), `${panels.length - 3} other sizes`] : panels;
  const grain = door.grain === 'across' ? ', grain across' : '';
  return `${door.quantity * door.leaves} off. Panels ${shown.join(', ')} ${units}${grain}.`;
}

function countOfPanels({ doors }: Report, index: number): string {
  const [first, ...more] = doors?.[index]?.panels ?? [];
  if (first === undefined) return '';
  return `${first.quantity} off.${more.length > 0 ? ' The door has panels of other sizes too: its sheets show them all.' : ''}`;
}

function doorName(report: Report, door: number): string {
  return safeText(report.doors?.[door]?.name ?? '');
}

/** The scale that a view is drawn at unless told: the largest of its usual ones at which it stays within 220 mm or so. */
export function usualScale(view: PlainView, report: Report, door: number): number {
  const { scales, extent } = VIEWS[view];
  return scales.find((scale) => extent(report, door) * scale <= FREE) ?? scales[scales.length - 1]!;
}

/** The views that a report has what it takes for. */
export function viewsOf(report: Report): PlainView[] {
  return (Object.keys(VIEWS) as PlainView[]).filter((view) =>
    view === 'corner'
      ? report.frame.cope !== undefined
      : !(view === 'door' || view === 'panel') || report.doors?.length,
  );
}
