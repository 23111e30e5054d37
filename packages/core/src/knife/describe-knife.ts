import { flipCurve } from '@fielded/geometry';
import { toDegrees } from '../measure/angle.ts';
import type { Head } from '../shop/shop.ts';
import type { LeastAlong } from './edge-clearance.ts';
import { outlineExtent } from './extent.ts';
import { type KnifeFace, knifePoint } from './knife-face.ts';
import type { KnifeOrder } from './knife-order.ts';
import type { KnifeReport, WallReport } from './knife-report.ts';
import type { SeenProfile } from './seen-profile.ts';
import { steelPath } from './steel-outline.ts';
import type { TightWall } from './tight-walls.ts';

type KnifeInHead = Pick<
  KnifeReport,
  | 'cut'
  | 'knife'
  | 'head'
  | 'cuttingRadius'
  | 'leastRadius'
  | 'rake'
  | 'shear'
  | 'wedge'
  | 'presented'
  | 'groundFor'
  | 'assumed'
  | 'count'
  | 'thickness'
  | 'bodyRadius'
  | 'headHeight'
>;

/** What the order and the head say, angles in degrees. */
export function describeOrder(order: KnifeOrder, head: Head, face: KnifeFace, leastRadius: number): KnifeInHead {
  return {
    cut: order.name,
    knife: order.knife,
    head: order.headName,
    cuttingRadius: face.radius,
    leastRadius,
    rake: toDegrees(head.rake),
    shear: toDegrees(head.shear),
    wedge: toDegrees(head.wedge),
    presented: toDegrees(order.tilt),
    groundFor: order.groundFor,
    assumed: order.assumed,
    count: head.knives,
    thickness: head.knifeThickness,
    bodyRadius: head.bodyDiameter / 2,
    headHeight: head.height,
  };
}

/** The outline left in the wood, its length and width, mm. */
export function reportWood(wood: SeenProfile): KnifeReport['wood'] {
  const { height, width } = outlineExtent(wood.chain);
  return { outline: steelPath(wood.chain.map((c) => flipCurve(c, 0))), length: height, width };
}

/** Side relief, degrees: the least that the rules ask for, and what is ground where the shop says. */
export function reportRelief({ rules, sideRelief }: KnifeOrder): NonNullable<KnifeReport['sideRelief']> {
  return {
    least: toDegrees(rules.leastSideClearance),
    ground: sideRelief === undefined ? null : toDegrees(sideRelief),
  };
}

/** A wall too square to the spindle, its ends on the steel, angles in degrees. */
export function reportWall({ seenFrom, seenTo, ...w }: TightWall, face: KnifeFace): WallReport {
  const onSteel = (p: { x: number; y: number }) => knifePoint(face, p.x, face.radius + p.y);
  return {
    ...w,
    sideClearance: toDegrees(w.sideClearance),
    draft: w.draft === null ? null : toDegrees(w.draft),
    onSteel: { from: onSteel(seenFrom), to: onSteel(seenTo) },
  };
}

/** A least angle along the edge, in degrees. */
export function inDegrees({ least, at }: LeastAlong): LeastAlong {
  return { least: toDegrees(least), at };
}
