import { type Report, readJobData } from '@fielded/core';
import type { Item } from '@fielded/render';
import type { Desk } from '../desk/desk.ts';
import { reportJoint } from '../job/answer-joint.ts';
import { setAt } from '../job/data.ts';
import { createPainter } from './painter.ts';
import { type Anchors, type Drawer, shiftOf } from './view-scene.ts';

/** A joint drawn dashed with the one that is worked on: what is proposed, else one kept to compare with. */
export interface Trace {
  /** Paints it into a drawing whose wood lies there: in the same frame, where one is drawn. */
  paint(wood: Anchors, scale: number): void;
}

export function createTrace(layer: SVGGElement, desk: Desk, draw: Drawer): Trace {
  const painter = createPainter(layer);
  return {
    paint(wood, scale) {
      const earlier = proposedReport(desk) ?? desk.trace.value;
      if (earlier === null) return painter.paint([]);
      const scene = draw(earlier, scale, []);
      const shift = wood.frame ? shiftOf(scene.frame, wood.frame) : shiftOf(scene.panel, wood.panel);
      layer.setAttribute('transform', `translate(${shift.x} ${shift.y})`);
      painter.paint(outlinesOf(scene.items));
    },
  };
}

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
function proposedReport({ proposal, doc }: Desk): Report | null {
  if (proposal.value === null) return null;
  const data = proposal.value.reduce((before, [path, value]) => setAt(before, path, value), doc.value.data);
  const { job } = readJobData(data, doc.value.shop?.data);
  return job && reportJoint(job);
}
