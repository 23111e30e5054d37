import { createSpeaker, type Speaker } from '@fielded/core';

/**
 * What stands at the dimensions of a section and a joint. A page that is being worked on draws these two first and loads no
 * other words of drawings with them: what is said elsewhere stands in another file.
 */
export const EDGE_WORDS = {
  'view.section': 'Section of the panel',
  'title.section': '{job}: section of the panel',
  'view.joint': 'Joint in section',
  'title.joint': '{job}: joint in section',
} as const;

/** See `Speaker`. */
export const sayEdge: Speaker<typeof EDGE_WORDS>['say'] = createSpeaker(EDGE_WORDS).say;
