import {
  type DoorReport,
  type MachineGuide,
  type Report,
  say,
  type TemplatePart,
  templateOffset,
  templateOutline,
} from '@fielded/core';
import { safeText } from '../text/safe-text.ts';
import { cutsEnd } from '../views/panel-part.ts';
import { sayList } from '../words/english/list.ts';
import type { InVoice } from '../words/lengths.ts';
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
  const outline = outlineOf(door, part, cutsEnd(report, 'front'), outside);
  if (outline === null) return null;
  const { title, units, language } = report;
  const notes = [
    ...(part === 'panel' ? noteBearings(head.bearings, bearing, outside, report) : []),
    ...(part === 'panel' ? noteRings(head.guides, bearing?.cut, report) : []),
    sayList('template.full-size', {}, report),
  ];
  const named = safeText(sayList(`template.${part}`, { job: title, door: door.name }, report));
  return { outline, title: named, units, ...(language && { language }), notes: notes.map(safeText) };
}

function outlineOf(door: DoorReport, part: TemplatePart, field: number, outside: number): Template['outline'] | null {
  try {
    return templateOutline(door, part, field, outside);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Notes on the bearings: another one for one cut, or each cut's own, which runs on the panel's edge. */
function noteBearings(
  own: NonNullable<DoorReport['head']>['bearings'],
  bearing: TemplateBearing | undefined,
  outside: number,
  voice: InVoice,
): string[] {
  if (bearing !== undefined) {
    const figures = { cut: bearing.cut, bearing: bearing.diameter, off: Math.abs(outside) };
    if (outside === 0) return [sayList('template.for.own', figures, voice)];
    return [sayList(outside < 0 ? 'template.for.inside' : 'template.for.outside', figures, voice)];
  }
  if (own.length === 0) return [sayList('template.own', {}, voice)];
  const bearings = own.map(({ cut, diameter }) => sayList('template.bearing', { cut, bearing: diameter }, voice));
  return [sayList('template.own.bearings', { bearings: bearings.join(', ') }, voice)];
}

/** Notes on ring fences: how far each cut falls short beside the ring's mark, each ring and cut once. */
function noteRings(guides: readonly MachineGuide[], only: string | undefined, report: Report): string[] {
  const notes = guides.flatMap(({ cut, ring }) => {
    if (ring === null || ring.within === null || (only !== undefined && only !== cut)) return [];
    const [at5, at10, at20] = ring.short.map(({ short }) => short);
    return [say('curve.ring-of', { cut, ring: ring.diameter, at5: at5!, at10: at10!, at20: at20! }, report)];
  });
  return [...new Set(notes)];
}
