import { describe, expect, it } from 'vitest';
import { readJob } from '../../packages/core/src/reading/read.ts';
import { isOpenQuote } from '../../packages/core/src/reading/yaml-words.ts';
import { broken, SOUND } from './job-texts.ts';

const ALL_CUTS = SOUND.slice(SOUND.indexOf('cuts:'));
const OGEE = '{ shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 }';

/** Every fault of a text as `line:column code message`. */
function faultsOf(text: string): string[] {
  return readJob(text).faults.map(({ line, column, code, message }) => `${line}:${column} ${code} ${message}`);
}

/** What is wrong, what of the sound job is replaced by what, and every fault that this gives, in full. */
const SLIPS: readonly (readonly string[])[] = [
  [
    'an unknown key',
    'thickness: 20',
    'thickness: 20\n  specis: oak',
    '5:3 unknown-key specis is no key of panel. Did you mean species? Known here: thickness, measured, species, film, sawn, width.',
  ],
  [
    'an unknown key with nothing near it',
    'thickness: 20',
    'thickness: 20\n  colour: red',
    '5:3 unknown-key colour is no key of panel. Known here: thickness, measured, species, film, sawn, width.',
  ],
  [
    'a wrong type',
    'thickness: 20',
    'thickness: [20]',
    '4:14 wrong-type panel.thickness: […] is a list, not a thickness. Write a thickness above 0, at most 10 m, such as 19 mm or 3/4 in.',
  ],
  [
    'a wrong type for a word',
    'run: under',
    'run: 3',
    '13:10 wrong-type cuts[0].run: 3 is a number, not one of under, over. Write one of under, over.',
  ],
  [
    'yes or no for a length',
    'swellGap: 2',
    'swellGap: yes',
    '8:13 not-a-length frame.swellGap: yes is not a length. Write a figure and its unit, such as 19 mm or 3/4 in.',
  ],
  [
    'a missing key',
    '  swellGap: 2\n',
    '',
    `5:1 missing-key frame.swellGap is missing. Add swellGap (left at the groove's bottom when the panel is made).`,
  ],
  [
    'a missing group',
    'panel:\n  thickness: 20\n',
    '',
    '1:1 missing-key panel is missing. Add panel (the stock that the panel is made of).',
  ],
  [
    'an empty value',
    'thickness: 20',
    'thickness:',
    '4:13 empty-value panel.thickness is empty. Write a thickness above 0, at most 10 m, such as 19 mm or 3/4 in.',
  ],
  [
    'a negative thickness',
    'thickness: 20',
    'thickness: -20',
    '4:14 out-of-range panel.thickness: -20 is too small. Write a thickness above 0, at most 10 m.',
  ],
  [
    'no thickness at all',
    'thickness: 20',
    'thickness: 0',
    '4:14 out-of-range panel.thickness: 0 is too small. Write a thickness above 0, at most 10 m.',
  ],
  [
    'NaN',
    'thickness: 20',
    'thickness: .nan',
    '4:14 not-a-length panel.thickness: .nan is not a length. Write a thickness above 0, at most 10 m, such as 19 mm or 3/4 in.',
  ],
  [
    'NaN as a word',
    'thickness: 20',
    'thickness: NaN',
    '4:14 not-a-length panel.thickness: NaN is not a number. Write a figure and its unit, such as 19 mm or 3/4 in.',
  ],
  [
    'infinity',
    'thickness: 20',
    'thickness: .inf',
    '4:14 not-a-length panel.thickness: .inf is not a length. Write a thickness above 0, at most 10 m, such as 19 mm or 3/4 in.',
  ],
  [
    'a number past all numbers',
    'thickness: 20',
    'thickness: 1e999',
    '4:14 not-a-length panel.thickness: 1e999 is not a length. Write a thickness above 0, at most 10 m, such as 19 mm or 3/4 in.',
  ],
  [
    'a thickness past ten metres',
    'thickness: 20',
    'thickness: 10001',
    '4:14 out-of-range panel.thickness: 10001 is too big. Write a thickness above 0, at most 10 m.',
  ],
  [
    'a hexadecimal number',
    'thickness: 20',
    'thickness: 0x14',
    '4:14 not-a-length panel.thickness: 0x14 is more than one figure. Write a figure and its unit, such as 19 mm or 3/4 in.',
  ],
  [
    'a weight',
    'thickness: 20',
    'thickness: 20 kg',
    '4:14 not-a-length panel.thickness: 20 kg is in "kg", which is not a unit known here. Write it in mm, cm, m, in or ft.',
  ],
  [
    'a fraction over nothing',
    'thickness: 20',
    'thickness: 1/0',
    '4:14 not-a-length panel.thickness: 1/0 is a division by nothing. Write a fraction such as 3/4 in.',
  ],
  [
    'a fraction without its unit',
    'thickness: 20',
    'thickness: 3/4',
    '4:14 not-a-length panel.thickness: 3/4 is a fraction with no unit. Write 3/4 in.',
  ],
  [
    'a stray hyphen',
    'thickness: 20',
    'thickness: 1--1/4',
    '4:14 not-a-length panel.thickness: 1--1/4 is a figure with a stray hyphen. Write 1-1/4 in.',
  ],
  [
    'a thousand or a decimal',
    'thickness: 20',
    'thickness: 1,000',
    '4:14 not-a-length panel.thickness: 1,000 is either a thousand or a decimal comma. Write 1000 or 1.000.',
  ],
  [
    'a decimal comma inside braces',
    'width: 6.4',
    'width: 6,4',
    '7:22 unknown-key A comma inside { } parts two keys, so 4 stands alone. Write the decimal with a point, or the length in quotes.',
  ],
  [
    'a measured thickness of nothing',
    'thickness: 20',
    'thickness: 20\n  measured: 0',
    '5:13 out-of-range panel.measured: 0 is too small. Write a thickness above 0, at most 10 m.',
  ],
  [
    'a depth as great as the thickness',
    'depth: 9,',
    'depth: 20,',
    '12:47 takes-whole-edge cuts[0].profile.depth: a cut 20 mm deep takes the whole edge of stock 20 mm thick. Write a depth less than the thickness, so that a tongue is left.',
  ],
  [
    'a set depth as great as the thickness',
    'run: under',
    'depth: 21',
    '13:12 takes-whole-edge cuts[0].depth: a cut 21 mm deep takes the whole edge of stock 20 mm thick. Write a depth less than the thickness, so that a tongue is left.',
  ],
  [
    'a cut from below deeper than the measured stock',
    'thickness: 20',
    'thickness: 20\n  measured: 8.5',
    '13:47 takes-whole-edge cuts[0].profile.depth: a cut 9 mm deep takes the whole edge of stock 8.5 mm thick. Write a depth less than the thickness, so that a tongue is left.',
  ],
  [
    'a set depth of nothing',
    'run: under',
    'depth: 0',
    '13:12 out-of-range cuts[0].depth: 0 is too small. Write a length above 0, at most 10 m.',
  ],
  [
    'a set reach of nothing',
    'run: under',
    'reach: -1',
    '13:12 out-of-range cuts[0].reach: -1 is too small. Write a length above 0, at most 10 m.',
  ],
  [
    'a reach less than the land',
    'reach: 38',
    'reach: 10',
    '12:56 land-past-reach cuts[0].profile.land, 11 mm, leaves nothing of the reach of 10 mm. Write a land less than the reach.',
  ],
  [
    'a shoulder as great as the depth',
    'shoulder: 1.5',
    'shoulder: 9',
    '12:70 shoulder-past-depth cuts[0].profile.shoulder, 9 mm, leaves nothing of the depth of 9 mm. Write a shoulder less than the depth, or use shape: rebate for an upright step alone.',
  ],
  [
    'an arc past a quarter circle',
    'reach: 14, depth: 4.6',
    'reach: 12, depth: 4.6',
    '16:14 past-quarter-circle cuts[1].profile: the cove rises 4.6 mm (depth less shoulder) over a run of 3 mm (reach less land), and past a quarter circle the arc turns under. Give it 13.6 mm of reach, or take the depth down to 3 mm.',
  ],
  [
    'a balance of nothing',
    'shoulder: 1.5',
    'shoulder: 1.5, balance: 0',
    '12:84 out-of-range cuts[0].profile.balance: 0 leaves out one of the two arcs of the ogee. Write a share between 0 and 1, such as 0.5; for one arc alone use shape: cove or ovolo.',
  ],
  [
    'a groove behind the frame',
    'setback: 7.5',
    'setback: 17',
    "7:11 groove-behind-frame The groove's setback of 17 mm and width of 6.4 mm come to 23.4 mm, past the back of a frame 22 mm thick. Write a smaller setback or width, or a thicker frame.",
  ],
  [
    'a groove deeper than the frame',
    'depth: 11',
    'depth: 23',
    `7:32 groove-deeper-than-frame frame.groove.depth, 23 mm, is more than the frame's thickness of 22 mm. Write the depth from the sight edge to the bottom of the groove, usually about 10 mm (3/8 in).`,
  ],
  [
    'a swell gap that fills the groove',
    'swellGap: 2',
    'swellGap: 11',
    `8:13 swell-gap-fills-groove frame.swellGap, 11 mm, leaves nothing of the groove's depth of 11 mm for the tongue. Write a gap less than the depth of the groove.`,
  ],
  [
    'a negative swell gap',
    'swellGap: 2',
    'swellGap: -1',
    '8:13 out-of-range frame.swellGap: -1 is too small. Write a length from 0 to 10 m.',
  ],
  [
    'a negative setback',
    'setback: 7.5',
    'setback: -1',
    '7:45 out-of-range frame.groove.setback: -1 is too small. Write a length from 0 to 10 m.',
  ],
  [
    'an unknown shape',
    'shape: ogee',
    'shape: oggee',
    '12:23 unknown-choice cuts[0].profile.shape: oggee is not known. Did you mean ogee? Write one of rebate, bevel, cove, ovolo, ogee, outline.',
  ],
  [
    'a shape by its other name',
    'shape: ogee',
    'shape: scotia',
    '12:23 unknown-choice cuts[0].profile.shape: scotia is not known. Did you mean cove? Write one of rebate, bevel, cove, ovolo, ogee, outline.',
  ],
  [
    'an unknown run',
    'run: under',
    'run: udner',
    '13:10 unknown-choice cuts[0].run: udner is not known. Did you mean under? Write one of under, over.',
  ],
  [
    'an unknown side',
    'side: back',
    'side: rear',
    '15:11 unknown-choice cuts[1].side: rear is not known. Did you mean back? Write one of front, back.',
  ],
  [
    'a tilt past upright',
    'run: under',
    'presented: 95',
    '13:16 out-of-range cuts[0].presented: 95 is too big. Write flat, on-edge, or an angle from 0° to 90°.',
  ],
  [
    'a tilt in no unit of angle',
    'run: under',
    'presented: 20 mm',
    '13:16 not-an-angle cuts[0].presented: 20 mm is in "mm", which is not a unit of angle. Write flat, on-edge, or an angle from 0° to 90°.',
  ],
  [
    'over on edge',
    'run: over',
    'run: over\n    presented: on-edge',
    '17:10 over-on-edge cuts[1].run: over has no meaning on edge, where the worked face stands against the fence. Leave run out, or present the panel flat.',
  ],
  [
    'one name twice',
    'name: back relief',
    'name: raise',
    '14:11 duplicate-cut-name cuts[1].name: "raise" is also the name of cuts[0]. Give each cut a name of its own: settings are told apart by it.',
  ],
  ['no cuts', ALL_CUTS, 'cuts: []\n', '9:7 no-cuts cuts holds no cut. Add at least one, with a side and a profile.'],
  ['cuts that are no list', ALL_CUTS, 'cuts: 3\n', '9:7 wrong-type cuts: 3 is a number, not a list. Write a list.'],
  [
    'neither a profile nor a knife',
    '    profile: { shape: cove, reach: 14, depth: 4.6, land: 9 }\n',
    '',
    '14:5 profile-or-knife cuts[1] has neither a profile nor a knife. Add a profile, or the name of a knife of the shop file.',
  ],
  [
    'both a profile and a knife',
    'run: over',
    'run: over\n    knife: cove-13',
    '14:5 profile-or-knife cuts[1] has both a profile and a knife. Keep one: a knife brings its own profile.',
    '18:12 unknown-knife cuts[1].knife: there is no shop file to look for cove-13 in. Add shop: and the file that describes it.',
  ],
  [
    'a head with no shop file',
    'run: over',
    'run: over\n    head: small',
    '18:11 unknown-head cuts[1].head: there is no shop file to look for small in. Add shop: and the file that describes it.',
  ],
  [
    'a later version of the format',
    'fielded: 1',
    'fielded: 2',
    '1:10 unknown-version Version 2 of the format is not known. Write fielded: 1.',
  ],
  ['no version', 'fielded: 1\n', '', '1:1 missing-key fielded is missing. Add fielded: 1, the version of this format.'],
  [
    'an unknown unit',
    'title: Test',
    'units: inches',
    '2:8 unknown-choice units: inches is not known. Did you mean in? Write one of mm, in.',
  ],
  [
    'a fit turned round',
    'title: Test',
    'fit: { snug: 1, loose: 0.2 }',
    '2:6 out-of-order fit: snug, 1 mm, is more than loose, 0.2 mm. Write a snug that is no more than loose: below snug is tight, above loose is loose.',
  ],
  [
    'a negative spread',
    'title: Test',
    'spread: { thickness: -0.1 }',
    '2:22 out-of-range spread.thickness: -0.1 is too small. Write a length from 0 to 10 m.',
  ],
  [
    'a moisture past all wood',
    'title: Test',
    'season: { made: 8, driest: 6, dampest: 31 }',
    '2:40 out-of-range season.dampest: 31 is too big. Write a moisture content from 0 to 30 %, or { temperature: 20, humidity: 45 } for the air it settles in.',
  ],
  [
    'a humidity past all air',
    'title: Test',
    'season: { made: 8, driest: { temperature: 20, humidity: 101 }, dampest: 11 }',
    '2:57 out-of-range season.driest.humidity: 101 is too big. Write a humidity from 0 to 100.',
  ],
  [
    'seasons turned round',
    'title: Test',
    'season: { made: 8, driest: 11, dampest: 6 }',
    '2:9 out-of-order season: driest, 11 %, is damper than dampest, 6 %. Write the lower moisture content as driest.',
  ],
  [
    'seasons turned round, given by their air',
    'title: Test',
    'season: { made: 8, driest: { temperature: 20, humidity: 70 }, dampest: { temperature: 25, humidity: 40 } }',
    '2:9 out-of-order season: driest, 70 %, is damper than dampest, 40 %. Write the lower moisture content as driest.',
  ],
  [
    'half a door',
    'title: Test',
    'doors: [{ quantity: 0.5, width: 400, height: 700, stile: 60, rail: 60 }]',
    '2:21 out-of-range doors[0].quantity: 0.5 is not a whole number. Write a whole number from 1 to 10000.',
  ],
  [
    'no doors at all',
    'title: Test',
    'doors: [{ quantity: 0, width: 400, height: 700, stile: 60, rail: 60 }]',
    '2:21 out-of-range doors[0].quantity: 0 is too small. Write a whole number from 1 to 10000.',
  ],
  [
    'a door without width',
    'title: Test',
    'doors: [{ width: 0, height: 700, stile: 60, rail: 60 }]',
    '2:18 out-of-range doors[0].width: 0 is too small. Write a length above 0, at most 10 m.',
  ],
  [
    'a door with no room for a panel',
    'title: Test',
    'doors: [{ width: 120, height: 700, stile: 60, rail: 60 }]',
    '2:18 door-too-small doors[0].width, 120 mm, leaves no room for a panel: two stiles take 120 mm. Write a larger width or narrower parts.',
  ],
  [
    'panels with no muntin between them',
    'title: Test',
    'doors: [{ width: 600, height: 700, stile: 60, rail: 60, across: 2 }]',
    '2:9 muntin-missing doors[0] has several panels and no muntin between them. Add muntin: and its width.',
  ],
  [
    'a groove through a stile',
    'title: Test',
    'doors: [{ width: 400, height: 700, stile: 11, rail: 60 }]',
    '2:43 groove-through-part doors[0].stile, 11 mm, is cut through by a groove 11 mm deep. Write a wider stile, or a shallower groove.',
  ],
  [
    'a groove through a muntin',
    'title: Test',
    'doors: [{ width: 600, height: 700, stile: 60, rail: 60, across: 2, muntin: 22 }]',
    '2:76 groove-through-part doors[0].muntin, 22 mm, is cut through from both its edges by a groove 11 mm deep. Write a wider muntin, or a shallower groove.',
  ],
  [
    'a title that is no text',
    'title: Test',
    'title: [a]',
    '2:8 wrong-type title: […] is a list, not a title. Write a title, up to 200 characters, in quotes if in doubt.',
  ],
  [
    'an empty title',
    'title: Test',
    'title: "  "',
    '2:8 empty-value title is empty. Write a title, up to 200 characters, in quotes if in doubt.',
  ],
  [
    'a key twice',
    '  thickness: 20',
    '  thickness: 20\n  thickness: 19',
    '5:3 duplicate-key panel.thickness is given twice, first on line 4. Keep one of them.',
  ],
  [
    'a tag',
    'thickness: 20',
    'thickness: !mm 20',
    '4:18 yaml-tag A tag, !mm, stands before the value. Take it out: the value alone is enough.',
  ],
  [
    'an alias to nothing',
    'thickness: 20',
    'thickness: *stock',
    '4:14 yaml-alias *stock stands for nothing. Give the value it repeats an anchor, &stock, above it.',
  ],
  [
    'a list for a key',
    'title: Test',
    '? [a]\n: 3',
    '2:3 yaml-key "[…]" cannot stand before the colon. Write a plain word there.',
  ],
  [
    'a key of the language',
    'title: Test',
    '__proto__: { thickness: 3 }',
    '2:1 yaml-key "__proto__" cannot stand before the colon. Write a plain word there.',
  ],
  [
    'a merge key',
    'panel:',
    'panel:\n  <<: { measured: 3 }',
    '4:3 unknown-key << is no key of panel. Known here: thickness, measured, species, film, sawn, width.',
  ],
  [
    'a tab for indent',
    '  swellGap: 2',
    '	swellGap: 2',
    '8:1 yaml-syntax This line is indented with a tab. Use spaces.',
  ],
  [
    'quotes that do not pair',
    'thickness: 20',
    'thickness: "3/4""',
    `4:19 yaml-syntax The quotes on this line do not pair up. Write inches as 3/4 in, or the whole in single quotes: '3/4"'.`,
  ],
  [
    'a list left open',
    '{ width: 6.4, depth: 11, setback: 7.5 }',
    '{ width: 6.4, depth: 11, setback: 7.5',
    '8:3 yaml-syntax A list in [ ] or a group in { } does not end, or lacks a comma. Part its entries with commas and close it.',
  ],
  [
    'indent that does not match',
    '  swellGap: 2',
    ' swellGap: 2',
    '8:1 yaml-syntax This line is not indented like the lines it belongs to. Line it up with them.',
  ],
  [
    'two colons on a line',
    'thickness: 20',
    'thickness: measured: 20',
    '4:14 yaml-syntax A colon too many, or a line that runs into the next. Write one "key: value" to a line, and quote a value that holds a colon.',
  ],
  [
    'two documents',
    'title: Test',
    'title: Test\n---\nfielded: 1',
    '3:1 yaml-several-documents A second document starts here, after a line of ---. Write one job to a file.',
  ],
  [
    'another YAML',
    'fielded: 1',
    '%YAML 1.1\n---\nfielded: 1',
    '1:1 yaml-version The file asks for YAML 1.1. Take the %YAML line out: files are read as YAML 1.2.',
  ],
  [
    'a shop where no file can be opened',
    'title: Test',
    'shop: ./shop.yaml',
    '2:7 shop-unreadable shop: ./shop.yaml: no other file can be opened from here. Open the shop file as well, or take this line out.',
  ],
];

/** The same for an outline in place of the ogee. */
const OUTLINES: readonly (readonly string[])[] = [
  [
    'a path that is none',
    'profile',
    '12:38 outline-unreadable cuts[0].profile.path: the path is not SVG path data: it cannot be read from "profile". Write it like "M 0 9 H 12 A 30 30 0 0 1 30 2 V 0".',
  ],
  [
    'an empty path',
    '',
    '12:38 outline-unreadable cuts[0].profile.path: the path is empty. Write it like "M 0 9 H 12 A 30 30 0 0 1 30 2 V 0".',
  ],
  [
    'a curve of a draft that no other program reads',
    'M 0 9 H 12 R 20 4 30 2 V 0',
    '12:38 outline-unreadable cuts[0].profile.path: the path is not SVG path data: it cannot be read from "R 20 4 30 2 V 0". Write it like "M 0 9 H 12 A 30 30 0 0 1 30 2 V 0".',
  ],
  [
    'a path that breaks off',
    'M 0 9 H 12 L 30',
    '12:38 outline-unreadable cuts[0].profile.path: the path is not SVG path data: it breaks off at the end. Write it like "M 0 9 H 12 A 30 30 0 0 1 30 2 V 0".',
  ],
  [
    'one point',
    'M 0 9',
    '12:38 outline-empty cuts[0].profile.path: the path draws nothing in the wood. Draw it from the edge to the face.',
  ],
  [
    'two paths',
    'M 0 9 H 12 M 14 9 H 20 V 0',
    '12:38 outline-several cuts[0].profile.path: the path lifts and starts again. Draw the outline as one path with one M at its start.',
  ],
  [
    'a path that goes on after Z',
    'M 0 9 H 12 V 0 Z L 3 3',
    '12:38 outline-several cuts[0].profile.path: the path lifts and starts again. Draw the outline as one path with one M at its start.',
  ],
  [
    'from the face to the edge',
    'M 30 0 V 2 L 12 9 H 0',
    '12:38 outline-reversed cuts[0].profile.path: the path runs from the face to the edge. Start it at the edge, at full depth, and end it at the face.',
  ],
  [
    'one that ends deeper than it starts',
    'M 0 5 H 12 L 30 9',
    '12:38 outline-reversed cuts[0].profile.path: the path ends deeper than it starts. Start it at the edge, at full depth, and end it at the face.',
  ],
  [
    'above the face',
    'M 0 -9 H 12 V -1 L 13 -0.5',
    '12:38 outline-empty cuts[0].profile.path: the path draws nothing in the wood. Draw it from the edge to the face.',
  ],
  [
    'beyond the edge',
    'M -9 9 A 5 5 0 0 1 -3 2 L -1 1',
    '12:38 outline-outside cuts[0].profile.path: the path lies outside the wood. Write x as the distance in from the edge and y as the depth below the face, both above 0.',
  ],
  [
    'one that crosses itself',
    'M 0 9 L 20 2 V 8 L 5 2 V 0',
    '12:38 outline-crosses-itself cuts[0].profile.path: the path crosses itself 12 mm from the edge and 4.8 mm deep. Draw it so that it meets itself nowhere.',
  ],
  [
    'one that crosses itself at a corner',
    'M 0 9 H 10 L 15 4 L 20 9 H 15 V 4 L 15 4 L 12 0',
    '12:38 outline-crosses-itself cuts[0].profile.path: the path crosses itself 15 mm from the edge and 4 mm deep. Draw it so that it meets itself nowhere.',
  ],
  [
    'a figure past all numbers',
    'M 0 9 H 1e999',
    '12:38 out-of-range cuts[0].profile.path: the path holds a figure beyond 10 m. Write it in the unit of the file.',
  ],
  [
    'a figure past ten metres',
    'M 0 9 H 20000 V 0',
    '12:38 out-of-range cuts[0].profile.path: the path holds a figure beyond 10 m. Write it in the unit of the file.',
  ],
  [
    'a path deeper than the stock',
    'M 0 21 H 12 V 0',
    '12:38 takes-whole-edge cuts[0].profile.path: a cut 21 mm deep takes the whole edge of stock 20 mm thick. Write a depth less than the thickness, so that a tongue is left.',
  ],
];

describe('a job with one slip in it', () => {
  it('is sound without the slip', () => {
    expect(faultsOf(SOUND)).toEqual([]);
  });

  it('is no list, no number and not empty', () => {
    const said = (text: string) => readJob(text).faults[0]!.message;
    expect(said('- a\n')).toBe(
      'The file is a list, not a group of keys. Start it with fielded: 1, as in the examples.',
    );
    expect(said('3\n')).toContain('The file is a number');
    expect(said('')).toContain('The file is empty');
    expect(said(broken('panel:\n  thickness: 20\n', 'panel:\n'))).toContain('panel is empty. Write a group of keys');
  });

  it('knows a quoted text whose quote is not closed: in single quotes two stand for one, in double ones a backslash before it (YAML 1.2)', () => {
    expect(["'it", "'it''", '"it', '"it\\"'].map(isOpenQuote)).toEqual([true, true, true, true]);
    expect(["it's", 'it', "'it'", "'it''s'", '"it"', '"it\\""'].map(isOpenQuote)).toEqual(Array(6).fill(false));
  });

  it.each(SLIPS)('says in full what is wrong with %s', (_, from, to, ...faults) => {
    expect(faultsOf(broken(from!, to!))).toEqual(faults);
  });

  it.each(OUTLINES)('says in full what is wrong with an outline: %s', (_, path, ...faults) => {
    expect(faultsOf(broken(OGEE, `{ shape: outline, path: "${path}" }`))).toEqual(faults);
  });
});
