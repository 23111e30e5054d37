/** What wood and seasons do to a joint. */
export const SEASON_WORDS = {
  'species-missing': 'How much the panel moves depends on its wood: name it, such as black cherry.',
  'unknown-species.several':
    '{species} names several woods: {woods}. Name the one it is, or give its own figures under species: name, tangential, radial, density.',
  'unknown-species.near':
    "{species} is not in the table of woods. Did you mean {near}? Choose by how it moves, not by its name, or give the wood's own figures under species: name, tangential, radial, density.",
  'unknown-species.none':
    "{species} is not in the table of woods, which holds North American, some European and some African ones. Name the one nearest in movement, or give the wood's own figures under species: name, tangential, radial, density.",
  'width-missing': 'How far the panel moves depends on its width across the grain: give that width, or the doors.',
  'moisture-out-of-range':
    '{when:said} the air is so damp that wood is wetter than {most:count} %, above which it no longer swells.',
  'temperature-out-of-range':
    "{when:said} the air is at {temperature:number} °C: the Wood Handbook's table of moisture covers −1 to 132 °C. Give the moisture content itself.",
  'bottoms-out':
    '{when:said} ({moisture:percent}) the panel swells until it bottoms out: it is {each:length} too wide at each edge, {whole:length} over all, and pushes the frame apart.',
  'bottoms-out.edge':
    '{when:said} ({moisture:percent}) the panel swells until it bottoms out at its free edge: it is {over:length} too wide, and pushes the frame apart.',
  'leaves-groove': '{when:said} ({moisture:percent}) the panel shrinks out of its groove.',
  'little-engagement':
    '{when:said} ({moisture:percent}) only {insertion:length} of the tongue is in the groove, less than the {least:length} that holds it.',
  'swells-tight.thick':
    '{when:said} ({moisture:percent}) the tongue swells tight in the groove, {over:length} too thick: the panel can no longer move and will split or push the frame apart.',
  'swells-tight.little':
    '{when:said} ({moisture:percent}) the tongue swells tight in the groove, with {spare:length} to spare: the panel can no longer move and will split or push the frame apart.',
  'swells-tight.nothing':
    '{when:said} ({moisture:percent}) the tongue swells tight in the groove, with nothing to spare: the panel can no longer move and will split or push the frame apart.',
  'swells-tight.still':
    '{when:said} ({moisture:percent}) the tongue, tight as made, is {over:length} too thick for the groove: the panel can no longer move and will split or push the frame apart.',
  'swells-tight.wedges':
    '{when:said} ({moisture:percent}) the panel swells further in than its tongue can go, and wedges: the tongue goes in {deepest:length}, and the edge swells to {reached:length}.',
  'outside-coefficients':
    'Some of this moisture lies outside 6 to 14 %, where the dimensional change coefficients hold: the change is computed by eq. 13-3 of the Wood Handbook instead, from green to oven-dry shrinkage.',
  'finish-before-glue-up':
    'Finish the panel before glue-up: {when:said} {bare:length} of bare wood would show along each long edge.',
  'when.made': 'As made',
  'when.driest': 'At the driest',
  'when.dampest': 'At the dampest',
  'when.driest.within': 'at the driest',
  'when.dampest.within': 'at the dampest',
} as const;
