/** What would put a section or a fit right. */
export const ADVICE_WORDS = {
  'advice.deeper': 'Take the {cut} {by:length} deeper.',
  'advice.shallower': 'Take the {cut} {by:length} shallower.',
  'advice.reach': 'Give the {cut} a reach of {reach:length}.',
  'advice.profile-reach': 'Give the {cut} another profile, with a reach of {reach:length}.',
  'advice.reach-and-deeper': 'Give the {cut} a reach of {reach:length}, and take it {by:length} deeper.',
  'advice.reach-and-shallower': 'Give the {cut} a reach of {reach:length}, and take it {by:length} shallower.',
  'advice.land': 'Give the {cut} a land of {land:length}.',
  'advice.groove': 'Make the groove {width:length} wide.',
  'advice.groove-depth': 'Make the groove {depth:length} deep.',
  'advice.cope-length': 'Let the rails go {length:length} into the stiles (frame.joint, length).',
  'advice.tenon': 'Make it a tenon, with a mortise at the bottom of the groove.',
  'advice.swell-gap': 'Leave a swell gap of {gap:length}.',
  'advice.groove-and-gap': 'Make the groove {depth:length} deep, and leave a swell gap of {gap:length}.',
  'advice.thicker-tongue': 'Take the {cut} {by:length} shallower, and make the groove {width:length} wide.',
  'advice.setback': 'Set the groove {setback:length} back from the front face.',
  'advice.sticking': 'Make the [sticking] {depth:length} deep.',
  'advice.present': 'Run it {held:said}: that way nothing is lost.',
  'advice.redraw': 'Change the profile: neither flat nor on edge does a knife leave it so.',
  'advice.none':
    'No one setting was found that puts this right and spoils nothing: change the profile of a cut, or the groove.',
  'advice.none.season':
    'No one size of the joint was found that puts this right and spoils nothing: a narrower panel, quarter-sawn stock or a steadier wood moves less.',
  'advice.none.size': 'No one size was found that puts this right and spoils nothing.',
  'advice.waits':
    'What would put it right asks for another value of a size that is advised for another problem: put that one right first, then look at this again.',
  'advice.another': 'Or: {advice:said}',
} as const;
