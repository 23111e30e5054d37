/** What doors, blanks and timber make awkward. */
export const DOOR_WORDS = {
  'too-narrow-for-end-grain':
    '{quantity:count} of the panels of door {door} are {width:length} across the grain, less than the {least:length} that is run on the end grain, and no other panels of their length make up a blank with them. {missing:length} of width is missing: a spare panel (spares: true) as test piece and sample would do it, or a carrier.',
  'little-engagement.ends':
    'At its ends only {insertion:length} of the tongue is in the groove, less than the {least:length} that holds it. Give frame.endGap less, or the groove more depth.',
} as const;
