// What stands under a view, as sentences.
import type { Report } from '@fielded/core';
import { sayView } from '../words/english/view.ts';
import { spokenLength } from '../words/lengths.ts';
import { facesSentence, tongueSentence } from '../words/verdict.ts';

/** The most sizes of panels that are listed of a door. */
const MOST_SIZES = 3;

/** How the tongue stands in the groove as drawn; '' where it does not go in. */
export const poseNote = (report: Report): string => (report.fit.frontFace === null ? '' : sayView('pose', {}, report));

/** What the tongue is, how it goes in, and how it stands as drawn. */
export const fitNotes = (report: Report): string[] =>
  [tongueSentence(report), facesSentence(report), poseNote(report)].filter(Boolean);

/** What the tongue is. */
export const tongueNote = (report: Report): string[] => [tongueSentence(report)];

/** Whether the rails' ends close on the sticking, and what is dashed. */
export function copeSentence(report: Report): string {
  const { cope } = report.frame;
  if (cope === undefined) return '';
  const { gap } = cope;
  return gap < 0.005 ? sayView('cope.closes', {}, report) : sayView('cope.open', { gap }, report);
}

/** How many there are of a door, and of which sizes its panels. */
export function countOfDoors(report: Report, index: number): string {
  const { doors, units } = report;
  const door = doors?.[index];
  if (door === undefined) return '';
  const plain = (mm: number) => spokenLength(mm, report, 1).replace(` ${units}`, '');
  const sizes = door.panels.map(({ width, height }) => `${plain(width)} × ${plain(height)}`);
  const more = sizes.length - MOST_SIZES;
  const shown =
    more > 0 ? [...sizes.slice(0, MOST_SIZES), sayView('doors.other-sizes', { count: more }, report)] : sizes;
  const figures = { count: door.quantity * door.leaves, panels: shown.join(', '), units };
  return sayView(door.grain === 'across' ? 'doors.count.across' : 'doors.count', figures, report);
}

/** How many there are of the first panel of a door, and whether the door has others. */
export function countOfPanels(report: Report, index: number): string {
  const [first, ...more] = report.doors?.[index]?.panels ?? [];
  if (first === undefined) return '';
  return sayView(more.length > 0 ? 'panels.count.more' : 'panels.count', { count: first.quantity }, report);
}
