import * as v from 'valibot';
import type { Units } from '../measure/length.ts';
import { DEFAULTS } from './defaults.ts';
import { angle, length, moisture, number, path, presentation, temperature, text } from './figures.ts';
import type { JobFile, ShopFile } from './job-file.ts';
import { MOST_CUTS, MOST_DOORS } from './limits.ts';
import { byShape, group, named } from './schema-shapes.ts';

/** The one version of the two formats there is. */
const VERSION = 1;

const NAMED_SHAPES = ['rebate', 'bevel', 'cove', 'ovolo', 'ogee'] as const;

const ABOVE_NOTHING = { above: 0 };
const NOTHING_OR_MORE = { least: 0 };

/**
 * What a job file may hold, with bare numbers in `units`: mm and radians out, defaults filled in.
 *
 * The one description of the file: it reads, it tells what is wrong, and the published JSON Schema is generated from it.
 */
export function jobSchema(units: Units): v.GenericSchema<unknown, JobFile> {
  const positive = (what: string, word?: string) => about(length(units, ABOVE_NOTHING, word), what);
  const orNothing = (what: string) => about(length(units, NOTHING_OR_MORE), what);
  return group({
    fielded: about(v.literal(VERSION), 'version of this format: 1'),
    title: v.optional(about(text('a title'), 'what the job is called'), DEFAULTS.title),
    units: v.optional(about(v.picklist(['mm', 'in']), 'unit of every bare number in the file'), DEFAULTS.units),
    shop: v.exactOptional(
      about(text('a file name'), 'shop file with knives, heads and machines, beside this file or below'),
    ),
    panel: about(
      group({
        thickness: positive('planed thickness: what the cutters are set for', 'thickness'),
        measured: v.exactOptional(positive('what the calliper says: the section is computed on this', 'thickness')),
        species: v.exactOptional(about(text('a wood'), 'the wood, for movement and weight')),
        sawn: v.optional(about(v.picklist(['flat', 'quarter']), 'how the stock was sawn'), DEFAULTS.sawn),
        width: v.exactOptional(positive('width across the grain, for the seasons', 'width')),
      }),
      'the stock that the panel is made of',
    ),
    frame: about(
      group({
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
        sticking: v.exactOptional(profileSchema(units)),
      }),
      'stiles and rails with their groove',
    ),
    cuts: v.pipe(v.array(cutSchema(units)), v.minLength(1), v.maxLength(MOST_CUTS)),
    fit: v.optional(
      group({
        target: v.optional(orNothing('clearance aimed at'), DEFAULTS.fit.target),
        snug: v.optional(orNothing('less clearance than this is tight'), DEFAULTS.fit.snug),
        loose: v.optional(orNothing('more clearance than this is loose'), DEFAULTS.fit.loose),
      }),
      {},
    ),
    spread: v.exactOptional(
      group({
        thickness: v.optional(orNothing('± of the stock'), DEFAULTS.spread),
        height: v.optional(orNothing('± of the spindle height of each cut'), DEFAULTS.spread),
        fence: v.optional(orNothing('± of the fence of each cut'), DEFAULTS.spread),
        grooveWidth: v.optional(orNothing('± of the groove width'), DEFAULTS.spread),
        film: v.optional(orNothing('± of the finish on each face'), DEFAULTS.spread),
        moisture: v.exactOptional(
          about(number({ least: 0, most: 30 }, 'a ± of moisture'), "± of the panel's moisture, points of %"),
        ),
      }),
    ),
    season: v.exactOptional(
      group({
        made: airSchema('when the panel is made'),
        driest: airSchema('at the driest'),
        dampest: airSchema('at the dampest'),
        pinned: v.optional(about(v.boolean(), 'pinned at the centre of its width'), DEFAULTS.pinned),
      }),
    ),
    doors: v.optional(v.pipe(v.array(doorSchema(units)), v.maxLength(MOST_DOORS)), []),
  }) as unknown as v.GenericSchema<unknown, JobFile>;
}

/** What a shop file may hold, with bare numbers in `units`. */
export function shopSchema(units: Units): v.GenericSchema<unknown, ShopFile> {
  const positive = (what: string) => about(length(units, ABOVE_NOTHING), what);
  const orNothing = (what: string) => about(length(units, NOTHING_OR_MORE), what);
  const speed = () => number({ above: 0, most: 100_000 }, 'a speed');
  const rules = DEFAULTS.rules;
  return group({
    fielded: about(v.literal(VERSION), 'version of this format: 1'),
    units: v.optional(about(v.picklist(['mm', 'in']), 'unit of every bare number in the file'), DEFAULTS.units),
    knives: v.optional(named(knifeSchema(units)), {}),
    heads: v.optional(named(headSchema(units)), {}),
    machines: v.optional(
      named(
        group({
          speeds: about(v.pipe(v.array(speed()), v.minLength(1)), 'spindle speeds, turns a minute'),
          seat: about(
            v.tuple([length(units, {}), length(units, {})]),
            'lowest and highest seat of the head, measured from the table',
          ),
          opening: positive('diameter of the hole in the table'),
          nutDiameter: positive('diameter of the spindle nut'),
          reversing: v.optional(about(v.boolean(), 'whether the spindle can turn both ways'), DEFAULTS.reversing),
          feeds: v.optional(about(v.array(number({ above: 0, most: 1000 }, 'a feed')), 'feeds, metres a minute'), []),
        }),
      ),
      {},
    ),
    rules: v.optional(
      group({
        leastEndGrainWidth: v.optional(orNothing('least width run on the end grain'), rules.leastEndGrainWidth),
        kerf: v.optional(orNothing('width of the saw cut'), rules.kerf),
        leastSideClearance: v.optional(degrees('least side clearance of a knife'), rules.leastSideClearance),
        leastClearance: v.optional(degrees('least clearance behind the edge'), rules.leastClearance),
        rimSpeed: v.optional(
          about(v.tuple([speed(), speed()]), 'least and greatest rim speed, metres a second'),
          rules.rimSpeed,
        ),
        leastEngagement: v.optional(orNothing('least wood that should stay in the groove'), rules.leastEngagement),
      }),
      {},
    ),
    rates: v.exactOptional(about(v.record(v.string(), v.unknown()), 'prices and times, by name')),
  }) as unknown as v.GenericSchema<unknown, ShopFile>;
}

function cutSchema(units: Units) {
  const size = (what: string) => v.exactOptional(about(length(units, ABOVE_NOTHING), what));
  return group({
    name: v.exactOptional(about(text('a name'), 'what the cut is called')),
    side: about(v.picklist(['front', 'back']), 'the face it works, front or back'),
    profile: v.exactOptional(profileSchema(units)),
    knife: v.exactOptional(about(text('a knife of the shop'), 'a knife of the shop file, instead of a profile')),
    depth: size('depth the spindle is really set to'),
    reach: size('reach the fence is really set to'),
    run: v.optional(about(v.picklist(['under', 'over']), 'cutter below or above the stock'), DEFAULTS.run),
    presented: v.optional(about(presentation(), 'flat, on-edge or degrees of tilt between'), DEFAULTS.presented),
    head: v.exactOptional(about(text('a head of the shop'), 'a head of the shop file')),
  });
}

/** A free outline's keys, and those that every other shape has. */
function shapeEntries(units: Units) {
  const size = (what: string, word: string) => about(length(units, ABOVE_NOTHING, word), what);
  const orNothing = (what: string) => about(length(units, NOTHING_OR_MORE), what);
  const drawn = { shape: v.literal('outline'), path: about(path(), 'SVG path data in (a, b), from edge to face') };
  const sized = {
    // A word that is no shape at all is reported with the outline among the shapes there are.
    shape: about(
      { ...v.picklist(NAMED_SHAPES), expects: [...NAMED_SHAPES, 'outline'].map((name) => `"${name}"`).join(' | ') },
      `one of ${[...NAMED_SHAPES, 'outline'].join(', ')}`,
    ),
    reach: size('how far in from the edge it ends', 'reach'),
    depth: size('depth at the edge', 'depth'),
    land: v.optional(orNothing('flat at full depth, from the edge'), DEFAULTS.land),
    shoulder: v.optional(orNothing('upright step at the field'), DEFAULTS.shoulder),
    balance: v.optional(about(number({}, 'a share'), 'where an ogee turns, 0 to 1 along its run'), DEFAULTS.balance),
  };
  return { drawn, sized };
}

function profileSchema(units: Units) {
  const { drawn, sized } = shapeEntries(units);
  return byShape(group(drawn), group(sized));
}

function knifeSchema(units: Units) {
  const { drawn, sized } = shapeEntries(units);
  const steel = {
    head: v.exactOptional(about(text('a head of the shop'), 'the head it is kept in')),
    groundFor: v.exactOptional(
      group({
        run: v.picklist(['under', 'over']),
        rotation: about(v.picklist(['clockwise', 'counterclockwise']), 'as seen from above'),
      }),
    ),
    measured: v.optional(
      about(v.picklist(['wood', 'knife']), 'whether the profile was taken off the wood or off the steel'),
      DEFAULTS.measured,
    ),
  };
  return byShape(group({ ...drawn, ...steel }), group({ ...sized, ...steel }));
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
    limiterGap: v.optional(about(length(units, NOTHING_OR_MORE), 'knife beyond its limiter'), DEFAULTS.limiterGap),
    maxSpeed: about(number({ above: 0, most: 100_000 }, 'a speed'), 'greatest speed marked on it, turns a minute'),
    knifeThickness: v.optional(positive('thickness of the knife steel'), DEFAULTS.knifeThickness),
    feed: v.optional(about(v.picklist(['hand', 'mechanical']), 'what the tool is marked for'), DEFAULTS.feed),
  });
}

function doorSchema(units: Units) {
  const positive = (what: string) => about(length(units, ABOVE_NOTHING), what);
  const count = (most: number) => number({ least: 1, most, whole: true }, 'a whole number');
  return group({
    name: v.exactOptional(about(text('a name'), 'what the door is called')),
    quantity: v.optional(about(count(10_000), 'how many doors of this size'), DEFAULTS.quantity),
    width: positive('over all'),
    height: positive('over all'),
    stile: positive('width of the stiles'),
    rail: positive('width of the rails'),
    across: v.optional(about(count(100), 'panels side by side'), DEFAULTS.across),
    up: v.optional(about(count(100), 'panels above each other'), DEFAULTS.up),
    muntin: v.optional(about(length(units, NOTHING_OR_MORE), 'width of the uprights between panels'), DEFAULTS.muntin),
  });
}

function airSchema(when: string) {
  const air = group({
    temperature: about(temperature(), 'of the air, °C'),
    humidity: about(number({ least: 0, most: 100 }, 'a humidity'), 'of the air, %'),
  });
  return about(v.union([moisture(), air]), `moisture content in %, or the air, ${when}`);
}

function degrees(what: string) {
  return about(angle({ least: 0, most: 89 }), what);
}

/** A schema with the words that say what it is for. */
function about<S extends v.GenericSchema>(schema: S, what: string) {
  return v.pipe(schema, v.description(what));
}
