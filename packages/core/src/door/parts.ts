import type { FrameJoint } from '../joint/frame.ts';
import { type Door, layOpenings } from './door.ts';
import type { DoorPart } from './door-report.ts';

/**
 * The parts of a door's frame, all doors and leaves counted (formula D3).
 *
 * Stiles run the whole height. Rails run between the stiles with the joint's length at both ends, muntins between rails
 * likewise; with a mitre, rails run the whole width and only mid rails and muntins have ends that go into a groove. A top rail
 * with a shaped head is sawn from stock that is wider by the rise.
 */
export function listParts(door: Door, joint: FrameJoint, thickness: number, wood = ''): DoorPart[] {
  const { width, height, stile, topRail, bottomRail, midRail, muntin, rows, columns } = door;
  const doors = door.quantity * door.leaves;
  const between = width - 2 * stile;
  const inner = between + 2 * joint.length;
  const rail = joint.kind === 'mitre' ? width : inner;
  const part = (name: DoorPart['part'], quantity: number, length: number, wide: number): DoorPart => ({
    part: name,
    quantity: quantity * doors,
    length,
    width: wide,
    thickness,
    wood,
  });
  const parts = [
    part('stile', 2, height, stile),
    part('top rail', 1, rail, topRail + (door.head?.rise ?? 0)),
    part('bottom rail', 1, rail, bottomRail),
  ];
  if (rows.length > 1) parts.push(part('mid rail', rows.length - 1, inner, midRail));
  if (columns.length > 1) {
    const heights = layOpenings(door)
      .filter(({ column }) => column === 0)
      .map((opening) => opening.height);
    for (const tall of new Set(heights)) {
      const count = heights.filter((other) => other === tall).length;
      parts.push(part('muntin', count * (columns.length - 1), tall + 2 * joint.length, muntin));
    }
  }
  return parts;
}
