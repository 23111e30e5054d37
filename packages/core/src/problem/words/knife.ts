/** What is wrong with a knife, its head or its limiter. */
export const KNIFE_WORDS = {
  'steel-past-foot':
    'The knife {knife} was measured {length:coarse} long from its tip, and after {most:coarse} the face of the head {head} leads away from the axis again. Check its outline, or name the head it is really kept in.',
  'face-never-reaches.some':
    'The face of the knives in the head "{head}" never reaches in to a radius of {least:coarse} for the {cut}: {rake:degrees} of [rake] on a cutting radius of {radius:coarse} sets it {off:coarse} off the axis. The greatest reach that works is {greatest:coarse}: take less reach, less [rake] or a larger head.',
  'face-never-reaches.none':
    'The face of the knives in the head "{head}" never reaches in to a radius of {least:coarse} for the {cut}: {rake:degrees} of [rake] on a cutting radius of {radius:coarse} sets it {off:coarse} off the axis. No reach works at these stations: take less [rake] or a larger head.',
  'limiter-never-reaches':
    'No limiter can be drawn for the {cut}: set back {gap:length} it would lie nearer the axis than the face of the head "{head}". Take less reach, less [rake] or a larger head.',
  'limiter-gap':
    'The knives of the head "{head}" stand {gap:length} out beyond their limiters, and it is for hand feed: EN 847-1 allows 1.1 mm there. Fit limiters that come closer; only a tool marked MEC, with a power feed, may have more. The mark on the tool and your local rules go before this.',
  'edge-meets-body':
    'The panel meets the body of the head "{head}" at the {cut}: it passes {least:coarse} from the axis, and the body stands out to {body:coarse}. A head with a larger cutting circle or a smaller body clears it.',
  'edge-meets-nut':
    'On the machine "{machine}" the panel meets the spindle nut at the {cut}: it passes {least:coarse} from the axis, and the nut stands out to {nut:coarse}. Another machine or a sunk nut clears it.',
  'knife-wider-than-head':
    'The knife for the {cut} takes {width:coarse} along the spindle, and the head "{head}" is {height:coarse} high. Take a higher head, or cut the profile in two.',
  'back-rubs':
    'The back of the knife for the {cut} rubs: its clearance falls to {clearance:degrees}, {back:length} back from the tip line and {along:length} along it. Grind the [wedge] smaller than {wedge:degrees}, or take less [rake] or less reach.',
  'little-clearance':
    "The knife for the {cut} has little clearance: {clearance:degrees}, {back:length} back from the tip line and {along:length} along it, under the shop's least of {least:degrees}. Grind the [wedge] smaller than {wedge:degrees}, or take less [rake] or less reach.",
  'heel-rubs':
    'The heel of the knife for the {cut} rubs: steel {thickness:length} thick with a [wedge] of {wedge:degrees} stands {out:length} outside its own cutting circle, {back:length} back from the tip line and {along:length} along it. Relieve the heel, or use thinner steel.',
  'no-side-clearance': "The knife for the {cut} has less side clearance than the shop's {least:degrees}.",
  'rubs.undercut':
    'From {a0:length} to {a1:length} from the edge, {b0:length} to {b1:length} down, it is undercut, and the sweep takes that away.',
  'rubs.slope': 'Slope that by {draft:degrees}.',
  'steel-leaves-lip.edge':
    "The knife {knife} leaves a lip at the {cut}: as measured, its steel ends {lip:length} short of the panel's edge at this setting. Set less reach, or have a longer knife ground.",
  'steel-leaves-lip.face':
    "The knife {knife} leaves a lip at the {cut}: as measured, its steel ends {lip:length} below the panel's face at this setting. Set less depth, or have a wider knife ground.",
  'may-leave-lip.edge':
    'The knife {knife} has to run on {lip:length} further towards the spindle than its profile is drawn, or it leaves a lip at the edge of the {cut}. Measure its steel before the first cut.',
  'may-leave-lip.face':
    'The knife {knife} has to run on {lip:length} further than its profile is drawn, or it leaves a lip at the face of the {cut}. Measure its steel before the first cut.',
} as const;
