import type { Door } from './door.ts';

/** A part of a door that a groove could cut through. */
export interface GroovedPart {
  readonly part: 'stile' | 'rail' | 'topRail' | 'bottomRail' | 'muntin' | 'midRail';
  /** Every groove in the part must be shallower than this, mm: half the width where both edges are grooved. */
  readonly room: number;
  readonly bothEdges: boolean;
}

/** The parts of a door, each once, with the depth of groove that each is too narrow for. */
export function groovedParts(
  door: Pick<Door, 'stile' | 'rail' | 'topRail' | 'bottomRail' | 'muntin' | 'midRail' | 'columns' | 'rows'>,
): readonly GroovedPart[] {
  const { stile, rail, topRail, bottomRail, muntin, midRail, columns, rows } = door;
  const outer = (part: GroovedPart['part'], width: number) => ({ part, room: width, bothEdges: false });
  const inner = (part: GroovedPart['part'], width: number) => ({ part, room: width / 2, bothEdges: true });
  const divided = columns.length > 1 || rows.length > 1;
  return [
    outer('stile', stile),
    outer('rail', rail),
    ...(topRail === rail ? [] : [outer('topRail', topRail)]),
    ...(bottomRail === rail ? [] : [outer('bottomRail', bottomRail)]),
    ...(divided && muntin > 0 ? [inner('muntin', muntin)] : []),
    ...(rows.length > 1 && midRail !== muntin ? [inner('midRail', midRail)] : []),
  ];
}
