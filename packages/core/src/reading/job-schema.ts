import * as v from 'valibot';
import { DEFAULTS } from '../job/defaults.ts';
import type { Units } from '../measure/length.ts';
import { doorSchema } from './door-schema.ts';
import { angle, millimetres, moisture, number, presentation, temperature } from './figures.ts';
import type { JobFile } from './job-file.ts';
import { MOST_CUTS, MOST_DOORS } from './limits.ts';
import { profileSchema, withShapes } from './profile-schema.ts';
import { about, group, lengthsIn, oncePerUnit, VERSION } from './schema-shapes.ts';
import { textLine } from './texts.ts';
import { speciesSchema } from './wood-schema.ts';

/**
 * What a job file may hold, with bare numbers in `units`: mm and radians out, defaults filled in.
 *
 * The one description of the file: it reads, it tells what is wrong, and the published JSON Schema is generated from it.
 */
export const jobSchema: (units: Units) => v.GenericSchema<unknown, JobFile> = oncePerUnit(makeJobSchema);

function makeJobSchema(units: Units): v.GenericSchema<unknown, JobFile> {
  return group({
    fielded: about(v.literal(VERSION), 'version of this format: 1'),
    title: v.optional(about(textLine('a title'), 'what the job is called'), DEFAULTS.title),
    units: v.optional(about(v.picklist(['mm', 'in']), 'unit of every bare number in the file'), DEFAULTS.units),
    terms: v.optional(about(v.picklist(['british', 'american']), 'whose trade terms the words use')),
    shop: v.exactOptional(
      about(textLine('a file name'), 'shop file with knives, heads and machines, beside this file or below'),
    ),
    panel: about(panelSchema(units), 'the stock that the panel is made of'),
    frame: about(frameSchema(units), 'stiles and rails with their groove'),
    cuts: v.pipe(v.array(cutSchema(units)), v.minLength(1), v.maxLength(MOST_CUTS)),
    fit: v.optional(fitSchema(units), {}),
    spread: v.exactOptional(spreadSchema(units)),
    season: v.exactOptional(seasonSchema()),
    doors: v.optional(v.pipe(v.array(doorSchema(units)), v.maxLength(MOST_DOORS)), []),
    spares: v.exactOptional(about(v.boolean(), 'whether narrow panels that fill no blank get a spare beside them')),
  }) as unknown as v.GenericSchema<unknown, JobFile>;
}

function panelSchema(units: Units) {
  const { positive, orNothing } = lengthsIn(units);
  return group({
    thickness: positive('planed thickness: what the cutters are set for', 'thickness'),
    measured: v.exactOptional(positive('what the calliper says: the section is computed on this', 'thickness')),
    species: v.exactOptional(about(speciesSchema(), 'the wood, for movement and weight')),
    film: v.exactOptional(orNothing('finish on each face of the tongue')),
    sawn: v.optional(about(v.picklist(['flat', 'quarter']), 'how the stock was sawn'), DEFAULTS.sawn),
    width: v.exactOptional(positive('width across the grain, for the seasons', 'width')),
  });
}

function frameSchema(units: Units) {
  const { positive, orNothing } = lengthsIn(units);
  return group({
    thickness: positive('thickness of stiles and rails', 'thickness'),
    groove: about(
      group({
        width: positive('width of the groove', 'width'),
        depth: positive('depth of the groove', 'depth'),
        setback: orNothing("from the frame's front face to the groove's front wall"),
      }),
      'its width, depth and setback',
    ),
    swellGap: orNothing("left at the groove's bottom when the panel is made"),
    species: v.exactOptional(about(speciesSchema(), "the frame's wood, where it is not the panel's")),
    sawn: v.exactOptional(about(v.picklist(['flat', 'quarter']), 'how its stock was sawn')),
    endGap: v.exactOptional(orNothing("left at the groove's bottom along the grain, at the panel's ends")),
    joint: v.exactOptional(
      group({
        kind: about(v.picklist(['cope', 'tenon', 'mitre']), 'how rails meet stiles'),
        length: v.exactOptional(orNothing('what goes into each side')),
      }),
    ),
    sticking: v.exactOptional(about(headedProfile(units), "worked on the front lip's arris")),
    backEdge: v.exactOptional(about(headedProfile(units), "worked on the back's inside arris after glue-up")),
  });
}

function fitSchema(units: Units) {
  const { orNothing } = lengthsIn(units);
  return group({
    target: v.optional(orNothing('clearance aimed at'), millimetres(DEFAULTS.fit.target)),
    snug: v.optional(orNothing('less clearance than this is tight'), millimetres(DEFAULTS.fit.snug)),
    loose: v.optional(orNothing('more clearance than this is loose'), millimetres(DEFAULTS.fit.loose)),
  });
}

function spreadSchema(units: Units) {
  const { orNothing } = lengthsIn(units);
  return group({
    thickness: v.optional(orNothing('± of the stock'), millimetres(DEFAULTS.spread)),
    height: v.optional(orNothing('± of the spindle height of each cut'), millimetres(DEFAULTS.spread)),
    fence: v.optional(orNothing('± of the fence of each cut'), millimetres(DEFAULTS.spread)),
    grooveWidth: v.optional(orNothing('± of the groove width'), millimetres(DEFAULTS.spread)),
    film: v.optional(orNothing('± of the finish on each face'), millimetres(DEFAULTS.spread)),
    spacer: v.exactOptional(orNothing('± of the spacer between two heads on one spindle')),
    moisture: v.exactOptional(
      about(number({ least: 0, most: 30 }, 'a ± of moisture'), "± of the panel's moisture, points of %"),
    ),
    setback: v.exactOptional(orNothing("± of the groove's setback from the front face")),
    grooveDepth: v.exactOptional(orNothing('± of the groove depth')),
    panelSize: v.exactOptional(orNothing("± of the panel's width and height")),
    square: v.exactOptional(
      about(angle({ least: 0, most: 5 }), '± by which fence and table are out of square, of each cut, degrees'),
    ),
  });
}

function seasonSchema() {
  return group({
    made: airSchema('when the panel is made'),
    driest: airSchema('at the driest'),
    dampest: airSchema('at the dampest'),
    pinned: v.optional(
      about(
        v.union([v.boolean(), v.literal('edge')]),
        'pinned at the centre of its width, along one edge, or not at all',
      ),
      DEFAULTS.pinned,
    ),
  });
}

/** A profile of the frame, and the head that runs it. */
function headedProfile(units: Units) {
  return withShapes(units, { head: v.exactOptional(about(textLine('a head of the shop'), 'a head of the shop file')) });
}

function cutSchema(units: Units) {
  const size = (what: string) => v.exactOptional(lengthsIn(units).positive(what));
  return group({
    name: v.exactOptional(about(textLine('a name'), 'what the cut is called')),
    side: about(v.picklist(['front', 'back']), 'the face it works, front or back'),
    profile: v.exactOptional(profileSchema(units)),
    knife: v.exactOptional(about(textLine('a knife of the shop'), 'a knife of the shop file, instead of a profile')),
    depth: size('depth the spindle is really set to'),
    reach: size('reach the fence is really set to'),
    run: v.optional(about(v.picklist(['under', 'over']), 'cutter below or above the stock'), DEFAULTS.run),
    presented: v.optional(about(presentation(), 'flat, on-edge or degrees of tilt between'), DEFAULTS.presented),
    head: v.exactOptional(about(textLine('a head of the shop'), 'a head of the shop file')),
  });
}

function airSchema(when: string) {
  const air = group({
    temperature: about(temperature(), 'of the air, °C'),
    humidity: about(number({ least: 0, most: 100 }, 'a humidity'), 'of the air, %'),
  });
  return about(v.union([moisture(), air]), `moisture content in %, or the air, ${when}`);
}
