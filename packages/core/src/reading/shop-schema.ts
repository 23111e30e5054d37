import * as v from 'valibot';
import { DEFAULTS } from '../job/defaults.ts';
import type { Units } from '../measure/length.ts';
import { angle, length, millimetres, number, presentation } from './figures.ts';
import type { ShopFile } from './job-file.ts';
import { MOST_HEADS, MOST_KNIVES, MOST_MACHINES } from './limits.ts';
import { withShapes } from './profile-schema.ts';
import { ratesSchema } from './rates-schema.ts';
import { about, group, named, oncePerUnit, VERSION } from './schema-shapes.ts';
import { textLine } from './texts.ts';
import { ownWood } from './wood-schema.ts';

const ABOVE_NOTHING = { above: 0 };
const NOTHING_OR_MORE = { least: 0 };

/** What a shop file may hold, with bare numbers in `units`. */
export const shopSchema: (units: Units) => v.GenericSchema<unknown, ShopFile> = oncePerUnit(makeShopSchema);

function makeShopSchema(units: Units): v.GenericSchema<unknown, ShopFile> {
  return group({
    fielded: about(v.literal(VERSION), 'version of this format: 1'),
    units: v.optional(about(v.picklist(['mm', 'in']), 'unit of every bare number in the file'), DEFAULTS.units),
    knives: v.optional(v.pipe(named(knifeSchema(units)), v.maxEntries(MOST_KNIVES)), {}),
    heads: v.optional(v.pipe(named(headSchema(units)), v.maxEntries(MOST_HEADS)), {}),
    machines: v.optional(v.pipe(named(machineSchema(units)), v.maxEntries(MOST_MACHINES)), {}),
    rules: v.optional(rulesSchema(units), {}),
    woods: v.exactOptional(about(named(ownWood({})), 'woods with figures of their own, by name')),
    rates: v.exactOptional(about(ratesSchema(), 'prices and times, for quotes')),
    name: v.exactOptional(about(textLine('a name'), "the shop's name, as a quote has it")),
    address: v.optional(about(v.pipe(v.array(textLine('a line')), v.maxLength(12)), 'its address, a line each'), []),
    logo: v.exactOptional(about(textLine('a file'), 'picture beside the shop file: .png, .jpg or .svg')),
  }) as unknown as v.GenericSchema<unknown, ShopFile>;
}

function knifeSchema(units: Units) {
  const steel = {
    head: v.exactOptional(about(textLine('a head of the shop'), 'the head it is kept in')),
    groundFor: v.exactOptional(
      group({
        run: v.picklist(['under', 'over']),
        rotation: about(v.picklist(['clockwise', 'counterclockwise']), 'as seen from above'),
      }),
    ),
    presented: v.exactOptional(about(presentation(), 'how the panel is held: what it was ground for')),
    fromFace: v.exactOptional(
      about(length(units, {}), "how far its deepest-cutting point lies in from the head's face on that side"),
    ),
    sideRelief: v.exactOptional(degrees('relief ground on walls square to the spindle')),
    kept: v.exactOptional(about(textLine('a place'), 'where its sample hangs or lies')),
    measured: v.optional(
      about(v.picklist(['wood', 'knife']), 'whether the profile was taken off the wood or off the steel'),
      DEFAULTS.measured,
    ),
  };
  return withShapes(units, steel);
}

function headSchema(units: Units) {
  const positive = (what: string) => about(length(units, ABOVE_NOTHING), what);
  return group({
    cuttingDiameter: positive('diameter of the cutting circle, at the longest tip'),
    bodyDiameter: positive('diameter of the body'),
    height: positive('height of the head'),
    rake: degrees("angle of the knife's face at the tip"),
    shear: v.optional(about(angle({ least: -60, most: 60 }), 'slant of the knife along the spindle'), DEFAULTS.shear),
    wedge: v.optional(degrees("angle between the knife's face and its ground back"), DEFAULTS.wedge),
    knives: v.optional(
      about(number({ least: 1, most: 20, whole: true }, 'a whole number'), 'how many'),
      DEFAULTS.knives,
    ),
    limiterGap: v.optional(
      about(length(units, NOTHING_OR_MORE), 'knife beyond its limiter'),
      millimetres(DEFAULTS.limiterGap),
    ),
    maxSpeed: about(speed(), 'greatest speed marked on it, turns a minute'),
    knifeThickness: v.optional(positive('thickness of the knife steel'), millimetres(DEFAULTS.knifeThickness)),
    feed: v.optional(about(v.picklist(['hand', 'mechanical']), 'what the tool is marked for'), DEFAULTS.feed),
    bore: v.exactOptional(positive('diameter of its bore')),
    minSpeed: v.exactOptional(about(speed(), 'least speed marked on it, turns a minute')),
    jointed: v.optional(about(v.boolean(), 'whether its knives are jointed'), DEFAULTS.jointed),
    slots: v.exactOptional(
      about(
        v.pipe(v.array(v.picklist(['under', 'over'])), v.minLength(1), v.maxLength(2)),
        'runs that its slots are marked for, under and over',
      ),
    ),
  });
}

function machineSchema(units: Units) {
  const positive = (what: string) => about(length(units, ABOVE_NOTHING), what);
  return group({
    speeds: about(v.pipe(v.array(speed()), v.minLength(1)), 'spindle speeds, turns a minute'),
    seat: about(
      v.tuple([length(units, {}), length(units, {})]),
      'lowest and highest seat of the head, measured from the table',
    ),
    opening: positive('diameter of the hole in the table'),
    nutDiameter: positive('diameter of the spindle nut'),
    reversing: v.optional(about(v.boolean(), 'whether the spindle can turn both ways'), DEFAULTS.reversing),
    feeds: v.optional(about(v.array(number({ above: 0, most: 1000 }, 'a feed')), 'feeds, metres a minute'), []),
    rings: v.exactOptional(
      about(v.pipe(v.array(length(units, ABOVE_NOTHING)), v.minLength(1)), 'hole diameters of its table rings'),
    ),
    spindle: v.exactOptional(positive('diameter of the spindle')),
    spindleLength: v.exactOptional(positive("usable above the seat's face, nut included")),
    power: v.exactOptional(about(number({ above: 0, most: 1000 }, 'a power'), 'of its motor, kW')),
    fenceGap: v.exactOptional(positive('greatest gap between the halves of the fence')),
    bearings: v.exactOptional(
      about(v.array(length(units, ABOVE_NOTHING)), 'diameters of the bearings for curved work'),
    ),
    ringFences: v.exactOptional(
      about(v.array(length(units, ABOVE_NOTHING)), 'outer diameters of the ring fences for curved work'),
    ),
    tallFence: v.exactOptional(about(v.boolean(), 'whether it has a fence to hold a panel upright')),
    tilt: v.optional(
      about(
        v.tuple([angle({ least: -90, most: 90 }), angle({ least: -90, most: 90 })]),
        'least and greatest tilt of the spindle',
      ),
      DEFAULTS.tilt,
    ),
  });
}

function rulesSchema(units: Units) {
  const { rules } = DEFAULTS;
  const length0 = (what: string, mm: number) =>
    v.optional(about(length(units, NOTHING_OR_MORE), what), millimetres(mm));
  const lengthAbove0 = (what: string, mm: number) =>
    v.optional(about(length(units, ABOVE_NOTHING), what), millimetres(mm));
  return group({
    leastEndGrainWidth: length0('least width run on the end grain', rules.leastEndGrainWidth),
    kerf: length0('width of the saw cut', rules.kerf),
    leastSideClearance: v.optional(degrees('least side clearance of a knife'), rules.leastSideClearance),
    leastClearance: v.optional(degrees('least clearance behind the edge'), rules.leastClearance),
    rimSpeed: v.optional(
      about(v.tuple([speed(), speed()]), 'least and greatest rim speed, metres a second'),
      rules.rimSpeed,
    ),
    leastEngagement: length0('least wood that should stay in the groove', rules.leastEngagement),
    knifeMark: lengthAbove0('greatest pitch of the knife marks', rules.knifeMark),
    fenceClearance: length0('left around what turns, in table and fence', rules.fenceClearance),
    edgeAllowance: length0('cleaned off each sawn edge', rules.edgeAllowance),
    greatestBlankWidth: lengthAbove0('greatest width of a blank of several panels', rules.greatestBlankWidth),
    cuttingEnergy: v.optional(
      about(number({ above: 0, most: 1000 }, 'a cutting energy'), 'along the grain, N/mm²'),
      rules.cuttingEnergy,
    ),
    lastPass: lengthAbove0('depth of the last of several passes', rules.lastPass),
    overLength: length0('added to the length of rough timber', rules.overLength),
    overWidth: length0('added to the width of rough timber', rules.overWidth),
    stripWidth: lengthAbove0('greatest width of a strip in a glued-up panel', rules.stripWidth),
    yield: v.optional(
      about(number({ above: 0, most: 1 }, 'a share'), 'share of the timber ordered that ends up in the work'),
      rules.yield,
    ),
    overrun: length0('steel beyond edge and face', rules.overrun),
    leastTongue: length0('a tip thinner than this is a feather edge', rules.leastTongue),
  });
}

function speed() {
  return number({ above: 0, most: 100_000 }, 'a speed');
}

function degrees(what: string) {
  return about(angle({ least: 0, most: 89 }), what);
}
