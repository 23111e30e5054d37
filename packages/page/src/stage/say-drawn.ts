import type { Report } from '@fielded/core';
import type { Anchors } from './view-scene.ts';

/** What a drawing of the wood shows, for those who do not see it: its sizes are read out one by one. */
export function sayDrawn({ section }: Report, { frame }: Anchors): string {
  const cuts = section.cuts.map(({ side, name, shape }) => `${name} on the ${side}, ${shape}`);
  return `Cut across, front up, edge at the left${frame ? ' in its groove' : ''}: ${cuts.join('; ')}.`;
}
