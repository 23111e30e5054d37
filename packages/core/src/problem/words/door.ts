/** Problems of doors, blanks and timber, and the words of a cutting list. */
export const DOOR_WORDS = {
  'too-narrow-for-end-grain':
    'Panels of door {door}, {quantity:count} off, are {width:length} across the grain, less than the {least:length} that is run on the end grain, and no other panels of their length make up a blank with them. {missing:length} of width is missing: a spare panel (spares: true) as test piece and sample would do it, or a carrier.',
  'too-narrow-for-end-grain.any':
    'Panels of door {door}, {quantity:count} off, are {width:length} across the grain, less than the {least:length} that is run on the end grain, and no other panels of their length make up a blank with them. A spare panel of any width beside each (spares: true), as test piece and sample, would do it, or a carrier.',
  'little-engagement.ends':
    "At its ends only {insertion:length} of the tongue is in the groove, less than the {least:length} that holds it. Leave a smaller gap at the panel's ends (frame.endGap), or the groove more depth.",
  'ends-stop-short':
    "At its ends the panel is meant to go in {insertion:length}, and the tongue stops at {deepest:length}. Leave a larger gap at the panel's ends (frame.endGap), or make the tongue thinner further in.",
  'head-too-hollow':
    'The hollow of the head of door {door} is too tight for the {cut}: the panel\'s edge has a radius of {edge:length} there, and the [head] "{head}" less the reach leaves {bearing:length}. Hollow arcs of {least:length} or more, as the rail shows them, would go; so would a [head] of up to {diameter:length} with this reach.',
  'head-too-hollow.corner':
    'The head of door {door} has a hollow corner, which the {cut} cannot follow: no bearing goes into it. Round it, as the rail shows it, with {least:length} or more for the [head] "{head}".',
  'head-rail-too-hollow':
    'The sticking cannot follow the head of door {door}: its rail is hollow there with a radius of {edge:length}, and the [head] "{head}" less the reach leaves {bearing:length}. Round arcs of {bearing:length} or more would go; so would a [head] of up to {diameter:length}.',
  'head-rail-too-hollow.corner':
    'The sticking cannot follow the head of door {door}: its rail has a hollow corner, which no bearing goes into. Round it with {bearing:length} or more for the [head] "{head}", or cut the corner by hand.',
  'head-field-pointed':
    "The raise runs to a point under the head of door {door}: the panel's edge has a radius of {edge:length} there, and the {cut} reaches in {reach:length}. Give the head a larger radius, or the cut less reach.",
  'head-bottoms-out':
    "At the dampest the panel of door {door} meets the groove's bottom beside its head: the edge that leans {lean:degrees} moves {moves:length} square to itself, and {gap:length} is free. Leave a gap of {wanted:length} or more at the panel's ends (frame.endGap).",
  'head-leaves-groove':
    "At the driest the panel of door {door} has {left:length} left in the groove beside its head, less than the {least:length} that hold it: the edge that leans {lean:degrees} draws back by {moves:length} square to itself. Leave a smaller gap at the panel's ends (frame.endGap), or the groove more depth.",
  'head-no-field':
    'The raises meet under the head of door {door}: the {cut} reaches in {reach:length} from every edge, and no field is left beside the head. Give the opening more height, the head less rise, or the cut less reach.',
  'head-not-flat':
    'Door {door} has a shaped head, and the {cut} is held at {held:degrees}: only a cut that is run flat goes round a curve. Run it flat, or leave the head straight.',
  'head-corner-past-groove':
    "The panel's corner under the head of door {door} goes {reach:length} into the top rail's corner, and the groove is {depth:length} deep: a cutter that goes round the corner leaves it no deeper there. Deepen the groove in the corner by hand to {needed:length}, take {off:length} off the panel's corner, or round the head.",
  'head-corner-past-groove.stile':
    "The panel's corner beside the head of door {door} goes {reach:length} up past the edge of the top rail's end, which lies in the stile's groove, and the rail's own groove is {depth:length} deep. Cut the rail's end back to {needed:length} above its edge there, take {off:length} off the panel's corner, or let the head run level into the stile.",
  'head-corner-by-hand':
    "The top rail of door {door} has a hollow corner, where a groove cutter on a bearing stops short. Square the groove out by hand to {needed:length} from the corner: the panel's corner goes in {reach:length}.",
  'curved-work':
    'Door {door} has a shaped head, run against a bearing or a ring fence and not the straight one: start against a lead-in pin or block, hold the panel in a jig with handles, leave untouched edge for the bearing to run on, prefer the cutter under the work, and never run a small or light piece so. One shoulder is cut against the grain: light passes there, or knives of the other hand with the other rotation. The marks on the tools, the rules where you work and trained practice go first.',
  'shoulder.left':
    'Seen from the front, the {cut} tears on the left shoulder where the spindle turns counterclockwise, on the right one where it turns clockwise.',
  'shoulder.right':
    'Seen from the front, the {cut} tears on the right shoulder where the spindle turns counterclockwise, on the left one where it turns clockwise.',
  'part.stile': 'stile',
  'part.top rail': 'top rail',
  'part.bottom rail': 'bottom rail',
  'part.mid rail': 'mid rail',
  'part.muntin': 'muntin',
  'timber.part': '{part} {door}',
  'timber.panel': 'panel {door}',
  'timber.blank': 'blank {doors}',
  'timber.assumed.overLength': '{over:coarse} over in length',
  'timber.assumed.overWidth': '{over:coarse} over in width',
  'timber.assumed.stripWidth': 'strips up to {width:coarse}',
  'timber.assumed.yield': '{percent:count} % of what is ordered ends in rough pieces',
  'timber.assumed.kerf': 'a saw cut of {width:coarse}',
  'timber.assumed.edgeAllowance': '{width:coarse} cleaned off each sawn edge',
  'timber.assumed.leastEndGrainWidth': 'end grain run from {width:coarse} of width',
  'timber.assumed.greatestBlankWidth': 'blanks up to {width:coarse} wide',
  'timber.assumed.gap': '{gap:coarse} between doors and carcase',
  'timber.assumed.between': '{gap:coarse} between leaves',
  'timber.assumed.coped': 'rails coped {length:coarse} into each side',
  'timber.assumed.wood': "frames of the panels' wood",
  'timber.assumed.weight': 'weights at 12 % moisture',
} as const;
