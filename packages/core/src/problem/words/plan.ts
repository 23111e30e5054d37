/** What the plan says: its steps, the panels they are about, what is checked before each set-up, and its cautions. */
export const PLAN_WORDS = {
  'step.set-up': 'Set up "{machine}" for {cuts}.',
  'step.set-up.again': 'Set up "{machine}" for {cuts} again: the knives should just touch the sample that was kept.',
  'step.test-piece': 'Run a test piece of the same stock: an end first, then an edge.',
  'step.test-piece.next': 'Run the sample of the cut before through it: an end first, then an edge.',
  'step.test-piece.again': 'Run a spare piece as a test: an end first, then an edge.',
  'step.measure':
    'Measure it {at:length} from the edge: it should be {thickness:length} thick. Correct the setting from the table until it is, and keep the piece as the sample.',
  'step.measure.stacked':
    'Measure it {at:length} from the edge: it should be {thickness:length} thick. Where it is not, make the spacer thinner or thicker by what it is off: the height does not change it. Keep the piece as the sample.',
  'step.measure.other':
    'Measure it against the drawing. Correct the setting until it is right, and keep the piece as the sample.',
  'step.run-ends': 'Run both ends, {cuts} on "{machine}": {panels}.',
  'step.run-edges': 'Run both long edges, {cuts} on "{machine}": {panels}.',
  'step.run-heads':
    'Take the straight fence off, fit the bearing or the ring fence with a lead-in, and run the shaped heads, {cuts} on "{machine}" at the same height: {panels}. The {shoulder:said} half, seen from the front, runs against the grain: light passes there. Then put the fence back to the sample for the long edges, which take the breakout away.',
  'step.run-heads.first':
    'Take the straight fence off, fit the bearing or the ring fence with a lead-in, and run the {shoulder:said} half of the shaped heads, seen from the front, from the side up to the apex, {cuts} on "{machine}" at the same height: {panels}. The other half follows with the other rotation.',
  'step.run-heads.second':
    'Run the {shoulder:said} half of the shaped heads, seen from the front, from the side up to the apex, {cuts} on "{machine}": {panels}.',
  'step.set-up.second':
    'Set up "{machine}" for the other half of the shaped heads: {cuts} with the knife {knife} in the head "{head}", {run:said}, spindle {rotation:said}, feed {feed:said}, on a bearing or a ring fence with a lead-in. The knives should just touch the sample that was kept.',
  'step.test-piece.second': 'Run a spare piece as a test, with a curve on it and its grain as the panels have it.',
  'step.test-piece.cope': 'Run an end of a spare piece of rail as a test, held in the carrier.',
  'step.test-piece.frame': 'Run an edge of a spare piece of the frame as a test.',
  'step.test-piece.back-edge': 'Run the inside corner of a spare frame as a test.',
  'step.measure.cope':
    'The front of its tenon should lie {setback:length} below the front face. Correct the setting until it does, and keep the piece as the sample: the sticking is tried on it.',
  'step.measure.sticking':
    'Push it onto the coped piece: the joint should close all along, with the front faces level. Correct the setting until it does, and keep the piece as the sample.',
  'step.cope':
    'Run the {cuts} on both ends of all rails and muntins on "{machine}", front face down, square in a carrier: they are too narrow to be held by themselves.',
  'step.cope.shoulder':
    'Then make the shoulder behind each tenon: a square rebate {long:length} long and {deep:length} deep.',
  'step.sticking':
    'Run the {cuts} along the inside edges of all parts of the frame on "{machine}", front face down, after their ends are cut; then the groove, {width:length} wide, {depth:length} deep and {setback:length} below the front face.',
  'step.back-edge':
    'Run the {cuts} round the inside of the glued-up frames on "{machine}", back down, on a bearing of {bearing:length} radius: the inside corners keep a radius of {corner:length}, that of the cutter.',
  'step.rip': 'Rip {panels}, now that their ends have every cut, and clean the sawn edges.',
  'step.sand': 'Sand the flat of the field and the back, and ease the arrises. Leave the tongues as they are.',
  'step.finish': 'Finish the panels before glue-up, tongues included, so that no bare wood shows when they shrink.',
  'step.glue-up': 'Glue up the frames. Keep the glue off the panels: they have to move.',
  'panels.all': 'all panels',
  'panels.narrow': 'the blanks for {doors}',
  'panels.ripped': 'the narrow panels of {doors}',
  'panels.of': 'the panels of {doors}',
  'panels.mixed': 'the panels of {doors}, and the blanks for {blanks}',
  'panels.carrier':
    'Those of {doors} are too narrow by themselves and in no blank: hold them in a carrier or beside a spare.',
  'panels.shaped': 'Of {doors} only the square end: the shaped heads follow.',
  'check.isolated': 'Machine isolated while the tool is mounted',
  'check.marks': 'Marks on the tool read: they go first',
  'check.knives': 'Knives sharp, set to the gauge, screws tight',
  'check.nut': 'Collars clean, spacers clamped, nut tight',
  'check.ring': 'Smallest ring that clears; height locked',
  'check.guards': 'Fence, bar, guards set; feeder locked',
  'check.guards.carrier': 'Fence, bar, guards set; carrier square',
  'check.guards.bearing': 'Bearing turns freely; guards set',
  'check.rotation': 'Spindle {rotation:said}, feed {feed:said}',
  'check.rotation.each': 'Spindle and feed go the way the set-up says',
  'check.by-hand': 'Turned by hand through a dry run with the machine off',
  'check.test-piece': 'Test piece run and measured before the work',
  'plan.caution':
    "Feed against the rotation, never with it. Never back the stock out: pull it straight off the cutter. Keep hands {hands:length} from the knives, and use a jig or a carrier for small pieces. The tool's marks, the machine's manual, local rules and trained practice go before this sheet.",
  'plan.curve':
    'On a curve start against a lead-in pin or block, hold the panel in a jig with handles, and never run a small or light piece.',
  'plan.feeder':
    'Feeder level, toe-in 1° to 3°, wheels {least:length} to {most:length} below the top of the stock (common practice).',
  'plan.sample':
    'To set to a kept sample: lay it as the panel lies. Turned by hand, the knives just touch it at the edge, {point:length} above the table, and where the cut ends, {out:length} from the fence.',
} as const;
