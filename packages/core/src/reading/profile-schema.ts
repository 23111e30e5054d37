import * as v from 'valibot';
import { DEFAULTS } from '../job/defaults.ts';
import type { Units } from '../measure/length.ts';
import { type LengthWord, length, millimetres, number } from './figures.ts';
import { about, byShape, group } from './schema-shapes.ts';
import { pathText, textLine } from './texts.ts';

const NAMED_SHAPES = ['rebate', 'bevel', 'cove', 'ovolo', 'ogee'] as const;

/** A profile in a job file, with bare numbers in `units`. */
export function profileSchema(units: Units): v.GenericSchema {
  return withShapes(units, {});
}

/** A profile with further keys beside its own, as a knife of the shop has. */
export function withShapes(units: Units, beside: v.ObjectEntries): v.GenericSchema {
  const size = (what: string, word: LengthWord) => about(length(units, { above: 0 }, word), what);
  const orNothing = (what: string) => about(length(units, { least: 0 }), what);
  const drawn = { shape: v.literal('outline'), path: about(pathText(), 'SVG path data in (a, b), from edge to face') };
  const inFile = {
    shape: v.literal('outline'),
    file: about(textLine('a file name'), 'a drawing of it beside this file, .dxf or .svg'),
  };
  const sized = {
    // A word that is no shape at all is reported with the outline among the shapes there are.
    shape: about(
      { ...v.picklist(NAMED_SHAPES), expects: [...NAMED_SHAPES, 'outline'].map((name) => `"${name}"`).join(' | ') },
      `one of ${[...NAMED_SHAPES, 'outline'].join(', ')}`,
    ),
    reach: size('how far in from the edge it ends', 'reach'),
    depth: size('depth at the edge', 'depth'),
    land: v.optional(orNothing('flat at full depth, from the edge'), millimetres(DEFAULTS.land)),
    shoulder: v.optional(orNothing('upright step at the field'), millimetres(DEFAULTS.shoulder)),
    balance: v.optional(about(number({}, 'a share'), 'where an ogee turns, 0 to 1 along its run'), DEFAULTS.balance),
  };
  return byShape(group({ ...drawn, ...beside }), group({ ...inFile, ...beside }), group({ ...sized, ...beside }));
}
