import type { Report } from '@fielded/core';
import type { Item } from '@fielded/render';
import type { Desk } from '../desk/desk.ts';
import { reportJoint } from '../job/answer-joint.ts';
import { applyChanges } from '../job/changes.ts';
import { adoptStyles } from '../style/adopt-styles.ts';
import traceStyles from '../style/trace.css?inline';
import { createPainter } from './painter.ts';
import { type Anchors, type Drawer, placeOf } from './view-scene.ts';

adoptStyles(traceStyles);

/** A joint drawn dashed behind the one that is worked on: the one proposed, else one kept to compare with. */
export interface Trace {
  /** Paints it into a drawing whose wood lies at `wood`: in the same frame, where one is drawn. */
  paint(wood: Anchors, scale: number): void;
}

export function createTrace(layer: SVGGElement, desk: Desk, draw: Drawer): Trace {
  const painter = createPainter(layer);
  return {
    paint(wood, scale) {
      const earlier = proposedReport(desk) ?? desk.trace.value;
      if (earlier === null) return painter.paint([]);
      painter.paint(outlinesOf(draw(earlier, scale, [], placeOf(wood, 'frame')).items));
    },
  };
}

/** The outlines of panel and frame among the items of a drawing. */
function outlinesOf(items: readonly Item[]): Item[] {
  return items.flatMap((item) =>
    item.kind === 'group' && (item.key === 'panel' || item.key === 'frame')
      ? item.items.flatMap((inner) =>
          inner.kind === 'path' && inner.key === 'outline' ? [{ ...inner, key: item.key }] : [],
        )
      : [],
  );
}

/** The joint that a proposal would make. */
function proposedReport({ proposal, doc, read }: Desk): Report | null {
  if (proposal.value === null) return null;
  const { job } = read(applyChanges(doc.value.data, proposal.value));
  return job && reportJoint(job);
}
