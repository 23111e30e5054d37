/** What keeps a cut from being set up, what spoils it, what is not known of it, and how a curve is guided. */
export const SETUP_WORDS = {
  'work.sticking': 'sticking',
  'work.cope': 'cope',
  'work.back edge': 'back edge',
  'work.groove': 'groove',
  'work.joint': 'joint',
  'run.under': 'under the stock',
  'run.over': 'above the stock',
  'rotation.clockwise': 'clockwise',
  'rotation.counterclockwise': 'counterclockwise',
  'feed.left-to-right': 'left to right',
  'feed.right-to-left': 'right to left',
  'cannot-be-run': 'No machine of the shop can make the {cut} with the head "{head}". What comes nearest:',
  'another-run.instead': 'The {cut} cannot be run as the job says.',
  'another-run.both': 'The {cut} is run another way than the job says, with both heads at once.',
  'advice.turn-over':
    'Turn the head over and run {run:said} on "{machine}", spindle {rotation:said} seen from above, feed {feed:said}.',
  'advice.run': 'Run it {run:said} on "{machine}", spindle {rotation:said} seen from above, feed {feed:said}.',
  'advice.other-head':
    'The head "{head}" would, with the knife {knife}: {run:said} on "{machine}", spindle {rotation:said} seen from above, its deepest point {point:length} above the table, {axis:length} from the fence to the axis, {speed:count} a minute.',
  'advice.other-head.ground':
    'The head "{head}" would, with a knife ground for it: {run:said} on "{machine}", spindle {rotation:said} seen from above, its deepest point {point:length} above the table, {axis:length} from the fence to the axis, {speed:count} a minute.',
  'wrong-hand':
    'On "{machine}" the knives for the {cut} are of the wrong hand to run {run:said} {rotation:said}: their backs would meet the wood. The mark and the [rake] of the knife decide.',
  'not-reversing': 'The spindle of "{machine}" does not turn {rotation:said}.',
  'ground-for-other-hold':
    'The knife {knife} was ground for work held at {ground:degrees}, and the {cut} holds it at {held:degrees}: it would cut another section. Hold the panel as the knife wants it, or have one ground.',
  'no-tall-fence':
    '"{machine}" has no tall fence, and the {cut} is run on edge. Use another machine, or make a fence to hold the panel upright.',
  'no-tilt.fixed': 'The spindle of "{machine}" does not tilt, and the {cut} needs {wanted:degrees}.',
  'no-tilt':
    'The spindle of "{machine}" does not tilt to {wanted:degrees} for the {cut}: it goes from {least:degrees} to {most:degrees}.',
  'seat-too-low.table':
    'The head "{head}" cannot go low enough on "{machine}" to run the {cut} {run:said}: its lower face would sit {seat:length} below the table, and it goes no lower than the table.',
  'seat-too-low.under':
    'The head "{head}" cannot go low enough on "{machine}" to run the {cut} {run:said}: its lower face would sit {seat:length} below the table, and {least:length} above it is the lowest.',
  'seat-too-low.below':
    'The head "{head}" cannot go low enough on "{machine}" to run the {cut} {run:said}: its lower face would sit {seat:length} below the table, and {least:length} below it is the lowest.',
  'seat-too-low':
    'The head "{head}" cannot go low enough on "{machine}" to run the {cut} {run:said}: its lower face would sit {seat:length} above the table, and {least:length} is the lowest.',
  'seat-too-high.below':
    'The head "{head}" cannot go high enough on "{machine}" to run the {cut} {run:said}: its lower face would sit {seat:length} above the table, and {most:length} below it is the highest.',
  'seat-too-high.both-below':
    'The head "{head}" cannot go high enough on "{machine}" to run the {cut} {run:said}: its lower face would sit {seat:length} below the table, and {most:length} below it is the highest.',
  'seat-too-high':
    'The head "{head}" cannot go high enough on "{machine}" to run the {cut} {run:said}: its lower face would sit {seat:length} above the table, and {most:length} is the highest.',
  'hole-too-small':
    'The table of "{machine}" does not open wide enough for the {cut}: the head "{head}" needs {needed:length}, and the opening is {opening:length}.',
  'spindle-bore':
    'The head "{head}" has a bore of {bore:length}, and the spindle of "{machine}" is {spindle:length} thick. Never bush a head: use another machine or head.',
  'spindle-too-short':
    'The head "{head}" is {height:length} high, and "{machine}" takes {length:length} above the seat, nut included.',
  'fence-gap':
    'The fence of "{machine}" opens {most:length}, and the knives for the {cut} need {gap:length}. A smaller head or less reach needs less.',
  'opening-too-small':
    'The head "{head}" does not go into the glued-up frames for the {cut}: it needs {needed:length} with the clearance around it, and door {door} has an opening of {opening:length}. Use a smaller head, or leave that door square.',
  'no-allowed-speed':
    '"{machine}" has no speed for the head "{head}": it may turn at most {most:count} a minute and {rim:number} m/s at the rim, and the slowest speed is {slowest:count}. The mark on the tool decides.',
  'no-allowed-speed.window':
    '"{machine}" has no speed for the head "{head}": it is marked {least:count} to {most:count} a minute, and {rim:number} m/s is the most at the rim. The mark on the tool decides.',
  'needs-feeder':
    'The head "{head}" is marked for mechanical feed, and "{machine}" has no power feed: it must never be fed by hand. Use a tool marked for hand feed.',
  'needs-feeder.by-hand':
    'The head "{head}" is marked for mechanical feed, and the {cut} goes past it by hand: it must never be fed by hand. Use a tool marked for hand feed.',
  'rim-too-slow':
    'At {speed:count} a minute, the fastest allowed on "{machine}", the head "{head}" runs at {rim:number} m/s, under the {least:number} m/s from which it cuts cleanly and is less apt to kick back. A larger head or another machine runs faster.',
  'coarse-marks':
    'The slowest feed of "{machine}", {feed:number} m/min, leaves knife marks {pitch:length} apart at the {cut}, more than {most:length}. Sand more, or use a slower feed.',
  'slot-not-marked':
    'The knife {knife} was ground to run {run:said}, and no slot of the head "{head}" is marked for that. Ask the maker of the head before it is run.',
  'motor-too-weak':
    'Even in many passes the {cut} is too much for the motor of "{machine}" at this feed: a pass takes {area:area}, and {most:area} is what it has the power for. Use a slower feed or another machine.',
  'stack-not-flat': 'Both heads at once work flat panels only.',
  'stack-spacer':
    'The heads for {lower} and {upper} do not come near enough: for a tongue of {tongue:length} they would overlap by {short:length}. Knives that stand out beyond the faces of their heads, or slimmer heads, leave room.',
  'stack-fence':
    'The heads for {lower} and {upper} need two fences: the panel passes {x1:length} and {x2:length} from the axis. A head {wanted:length} across for {upper} would do, or a reach of {reach:length}.',
  'stack-fence.head':
    'The heads for {lower} and {upper} need two fences: the panel passes {x1:length} and {x2:length} from the axis. A head {wanted:length} across for {upper} would do.',
  'stack-hands':
    'The knives for {lower} and {upper} are of one hand: on one spindle, one under and one above the stock, they have to be of opposite hands.',
  'stack-spindle':
    'Both heads and the spacer take {height:length} of the spindle, and "{machine}" has {length:length} above the seat, nut included.',
  'stack-speed':
    'No speed of "{machine}" suits both heads: within their marks, and from {least:number} to {most:number} m/s at both rims.',
  'stack-passes':
    'Both heads at once take {area:area} in one pass, and "{machine}" has the power for {most:area}: they cannot be run in several passes.',
  'half.left': 'left',
  'half.right': 'right',
  'curve.half':
    'The {shoulder:said} half of the curve, side to apex, seen from the front; the other half with the other rotation.',
  'curve.whole':
    'The whole of the curve; seen from the front, the {shoulder:said} half runs against the grain: light passes there.',
  'curve.bearing': 'Bearing of {needed:length}, on the panel itself or a template like it.',
  'curve.bearing-wanted': 'Bearing of {needed:length} on the panel itself; one of another diameter runs on a template.',
  'curve.template-outside':
    "Bearing of {available:length} on a template {outside:length} outside the panel's edge; on the panel itself it would be {needed:length}.",
  'curve.template-inside':
    "Bearing of {available:length} on a template {outside:length} inside the panel's edge; on the panel itself it would be {needed:length}.",
  'curve.ring':
    'Ring fence of {ring:length}, centre {setOff:length} behind the axis: {at5:length} short of the reach 5° off its mark, {at10:length} at 10°, {at20:length} at 20°; stay within {along:length} of the mark for {short:length}.',
  'curve.ring-of':
    'The {cut} on a ring fence of {ring:length}: {at5:length} short 5° off its mark, {at10:length} at 10°, {at20:length} at 20°.',
  'curve.ring-exact': 'Ring fence of {ring:length} about the axis: the full reach all round.',
  'curve-fed-by-hand':
    'The head "{head}" is marked for mechanical feed, and the shaped heads are fed by hand: it must never run them. Use a tool marked for hand feed for the {cut}.',
  'one-rotation':
    'The {cut} runs the {shoulder:said} shoulder of the shaped heads, seen from the front, against the grain. Turning the head over changes nothing, since its knives keep their hand. A knife of the same outline ground to run {run:said} {rotation:said} would run it; else take it in light passes.',
  'one-rotation.assumed':
    'The {cut} runs the {shoulder:said} shoulder of the shaped heads, seen from the front, against the grain, if its knife has the hand that was assumed. A knife of the same outline ground to run {run:said} {rotation:said} would run it; else take it in light passes.',
  'no-guide':
    'To run the shaped heads the {cut} wants a bearing of {needed:length}, and no bearing or ring fence of "{machine}" serves. One of another diameter, less than the cutting circle, does on a template.',
  'ring-falls-short':
    'On the ring fence of {ring:length} the {cut} falls short of its reach beside the mark: {at5:length} at 5°, {at10:length} at 10°, {at20:length} at 20°. Mark the ring and keep the work on the mark; a bearing of {needed:length} has no such fault.',
  'unknown.bearings':
    'Which bearings and ring fences "{machine}" has for the shaped heads is not known. Write their diameters as bearings and ringFences.',
  'unknown.fromFace':
    "How high the head sits is not known. Measure with a depth gauge how far the deepest point of the knife {knife} lies in from the head's face, and write it as {key:path}.",
  'unknown.knife':
    'How high the head sits is not known until its knife is ground. Set the deepest point of the knife to the height given, with a rule from the table.',
  'unknown.knives':
    'How high the head sits for the {cut} is not known: no knife that the shop keeps in the head "{head}" has its profile. Set the deepest point of the knife to the height given, with a rule from the table, or describe the knife in the shop with its {key:path}.',
  'unknown.presented': 'Nobody said how work is held for the knife {knife}. Ask, and write it as {key:path}.',
  'unknown.bore': 'The bore of the head "{head}" is not known. Read it off the head, and write it as {key:path}.',
  'unknown.spindle':
    'The spindle of "{machine}" was not checked against the bore. Measure it, and write it as {key:path}.',
  'unknown.spindleLength':
    'Whether the head goes on "{machine}" with its nut was not checked. Measure the spindle above the seat, and write it as {key:path}.',
  'unknown.fenceGap':
    'Whether the fence of "{machine}" opens far enough was not checked. Measure its greatest gap, and write it as {key:path}.',
  'unknown.power':
    'Whether the motor of "{machine}" takes it in one pass was not checked. Read its power off the plate, and write it as {key:path}.',
  'unknown.tallFence':
    'Whether "{machine}" has a fence to hold the panel upright was not checked. Write it as {key:path}.',
  'unknown.rings': 'Whether the head reaches into the table of "{machine}" was not checked.',
} as const;
