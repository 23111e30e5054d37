/** What is wrong with a section or a fit. */
export const JOINT_WORDS = {
  'no-tongue': 'The cuts meet: they leave no wood {where:spans} from the edge.',
  'no-tongue.within': 'The cuts meet: they leave no wood within {depth:length} of the edge.',
  'split-edge':
    'The cuts leave the wood in separate layers {where:spans} from the edge. Change the profile or how it is run.',
  'taken-from-drawing':
    'The {cut} cannot be cut as drawn {held:said}: the turning knife also takes {area:area} that the drawing keeps, {x0:coarse} to {x1:coarse} from the edge and {y0:coarse} to {y1:coarse} below the face.',
  'held.flat': 'with the panel flat',
  'held.on-edge': 'with the panel on edge',
  'held.run-flat': 'flat',
  'held.run-on-edge': 'on edge',
  'held.tilted': 'with the spindle tilted {tilt:degrees}',
  'will-not-enter': 'The tongue will not enter: it needs a groove {excess:length} wider.',
  'stops-short.wedges':
    "The tongue goes in only {deepest:length}, {short:length} short: it wedges in the groove's mouth.",
  'stops-short.reach': 'The tongue goes in only {deepest:length}: the {cut} ends {short:length} before the frame.',
  'tight.little': 'The tongue is tight: it goes in with {spare:length} to spare and needs {snug:length} to slide.',
  'tight.nothing': 'The tongue is tight: it goes in with nothing to spare and cannot slide.',
  loose: 'The tongue is loose: it has {spare:length} to spare, more than {loose:length}, and the panel will rattle.',
  'sticking-in-groove':
    "The [sticking] is {depth:length} deep and breaks into the groove, which starts {setback:length} below the frame's face.",
  'cope-short':
    'The [sticking] reaches {reach:length} from the sight edge, and the rails go only {length:length} into the stiles: their coped ends fall short of it by {short:length}. Let the rails go in {reach:length} or more (frame.joint, length), or take a narrower [sticking].',
  'cope-long':
    'The stub tenon of the coped rails is {length:length} long, and the groove it goes into is {depth:length} deep: each joint stays {over:length} open.',
  'no-swell-gap':
    'No gap is left at the bottom of the groove: a panel that swells in damp air has nowhere to go and can burst the frame.',
  'raise-hidden': 'The [raise] ends inside the groove: none of it will show.',
  'another-unit':
    '{size:said} is {thickness:length} thick, as stock hardly ever is: was it meant in another unit? {other:said}',
  'size.stock': 'The stock',
  'size.measured': 'The stock as measured',
  'size.frame': 'The frame',
  'unit.inches': 'Write inches as 3/4 in, or units: in at the top of the file.',
  'unit.millimetres': 'Write millimetres as 19 mm, or units: mm at the top of the file.',
  'cut-misses':
    'The {cut} misses the stock by {by:length} and takes nothing: run over, its depth follows the stock. Measure the stock again.',
  'cut-misses.touches':
    'The {cut} takes nothing: at this setting it does no more than touch the stock. Set it deeper, or measure the stock again.',
  'feather-edge':
    'The tongue ends in a feather edge: its tip is {tip:length} thick, and under {least:length} it breaks out or splits.',
  'no-lip': 'The frame has no {side:said}: nothing holds the panel there.',
  'thin-lip':
    'The {side:said} is {lip:length} thin: under {least:length} it breaks out when it is ploughed, or splits in use.',
  'lip.front': 'front lip',
  'lip.back': 'back lip',
  'raises-meet.door':
    'The raises meet: the panel of {door} is {width:coarse} wide and {height:coarse} high, and two raises of {reach:coarse} take {both:coarse} of it. No field is left.',
  'raises-meet.panel':
    'The raises meet: the panel is {width:coarse} wide, and two raises of {reach:coarse} take {both:coarse} of it. No field is left.',
  'leans-over-panel':
    'The {cut} is run over the stock with the spindle tilted by {tilt:degrees}: the worked face lies up, the other on the table, and the top of the spindle leans towards the panel, with head and nut over the wood. The depth follows the thickness of each piece. See that the machine tilts that way, and turn the spindle by hand over the panel before it runs. Run under, the worked face lies on the table and the spindle leans away.',
} as const;
