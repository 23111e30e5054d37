import {
  type DoorReport,
  formatLength,
  type MachineGuide,
  type Report,
  say,
  type TemplatePart,
  templateOffset,
  templateOutline,
} from '@fielded/core';
import { safeText } from '../text/safe-text.ts';
import type { Template } from './template-sheets.ts';

/** A bearing that is to run on a template of the panel: its diameter, mm, and the cut that it is for. */
export interface TemplateBearing {
  readonly cut: string;
  readonly diameter: number;
}

/**
 * The template of a part of a shaped door, full size, with what there is to say of it; null where nothing is left of the part.
 *
 * With a `bearing` the panel's outline is moved so that this one gives the cut's reach; without, it is the panel's own.
 *
 * @throws RangeError for a door without a shaped head, and for a bearing of a cut whose own is not known.
 */
export function makeTemplate(
  report: Report,
  door: DoorReport,
  part: TemplatePart,
  bearing?: TemplateBearing,
): Template | null {
  const { head } = door;
  if (head === undefined) throw new RangeError(`door ${door.name} has no shaped head`);
  const own = bearing && head.bearings.find(({ cut }) => cut === bearing.cut);
  if (bearing && !own) throw new RangeError(`the bearing of ${bearing.cut} is not known`);
  const outside = bearing && own ? templateOffset(own.diameter / 2, bearing.diameter / 2) : 0;
  const reach = Math.max(0, ...report.section.cuts.filter(({ side }) => side === 'front').map((cut) => cut.reach));
  const outline = outlineOf(door, part, reach, outside);
  if (outline === null) return null;
  const { title, units } = report;
  const notes = [
    ...(part === 'panel' ? noteBearings(head.bearings, bearing, outside, report) : []),
    ...(part === 'panel' ? noteRings(head.guides, bearing?.cut, report) : []),
    'Full size. Try a test piece in the door first.',
  ];
  return { outline, title: safeText(`${title}: door ${door.name}, ${part}`), units, notes: notes.map(safeText) };
}

function outlineOf(door: DoorReport, part: TemplatePart, reach: number, outside: number): Template['outline'] | null {
  try {
    return templateOutline(door, part, reach, outside);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** What runs on the template: another bearing for one cut, or each cut's own on the panel's edge. */
function noteBearings(
  own: NonNullable<DoorReport['head']>['bearings'],
  bearing: TemplateBearing | undefined,
  outside: number,
  { units }: Report,
): string[] {
  const length = (mm: number) => formatLength(mm, units);
  if (bearing !== undefined) {
    const side = outside < 0 ? 'inside' : 'outside';
    const where = outside === 0 ? "the panel's own edge" : `${length(Math.abs(outside))} ${side} the panel's edge`;
    return [`For the ${bearing.cut} on a bearing of ${length(bearing.diameter)}: ${where}.`];
  }
  if (own.length === 0) return ["The panel's own edge."];
  return [
    `The panel's own edge: bearing ${own.map(({ cut, diameter }) => `${length(diameter)} for ${cut}`).join(', ')}.`,
  ];
}

/** How far each cut on a ring fence falls short beside its mark, each ring and cut once. */
function noteRings(guides: readonly MachineGuide[], only: string | undefined, report: Report): string[] {
  const notes = guides.flatMap(({ cut, ring }) => {
    if (ring === null || ring.within === null || (only !== undefined && only !== cut)) return [];
    const [at5, at10, at20] = ring.short.map(({ short }) => short);
    return [say('curve.ring-of', { cut, ring: ring.diameter, at5: at5!, at10: at10!, at20: at20! }, report)];
  });
  return [...new Set(notes)];
}
