import type { Report } from '@fielded/core';
import type { PanelPart } from './panel-part.ts';
import { surfacesAt } from './panel-part.ts';

/** Where the panel stands to the frame. Wood mm; (0, 0) is the panel's edge at its front face. */
export interface Stand {
  /** How far the tongue is in; null when it is drawn in front of the groove. */
  readonly inserted: number | null;
  /** The frame's edge. */
  readonly sight: number;
  /** The frame's front face, down from the panel's. */
  readonly front: number;
}

/**
 * Stands the panel to its frame: pushed in as far as it goes, and hard against the groove's front wall or in the middle of
 * its float; a tongue that does not enter stands `inFront` mm before the groove, level with its middle.
 */
export function standPanel(report: Report, part: PanelPart, inFront: number, float: 'front wall' | 'middle'): Stand {
  const { fit, tongue, frame } = report;
  if (fit.frontFace && fit.deepestInsertion !== null) {
    const inserted = Math.min(tongue.insertion, fit.deepestInsertion);
    const { least, most } = fit.frontFace;
    return { inserted, sight: inserted, front: float === 'middle' ? (least + most) / 2 : most };
  }
  const tip = surfacesAt(part, 0);
  const grooveMiddle = frame.groove.setback + frame.groove.width / 2;
  const front = tip ? (tip.top + tip.bottom) / 2 - grooveMiddle : 0;
  return { inserted: null, sight: -inFront, front };
}
