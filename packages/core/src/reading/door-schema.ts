import * as v from 'valibot';
import { DEFAULTS } from '../job/defaults.ts';
import type { Units } from '../measure/length.ts';
import { length, millimetres, number } from './figures.ts';
import { about, group, lengthsIn } from './schema-shapes.ts';
import { pathText, textLine } from './texts.ts';

/** A door of a job file. */
export function doorSchema(units: Units): v.GenericSchema {
  const { positive, orNothing } = lengthsIn(units);
  const count = (most: number) => number({ least: 1, most, whole: true }, 'a whole number');
  return group({
    name: v.exactOptional(about(textLine('a name'), 'what the door is called')),
    quantity: v.optional(about(count(10_000), 'how many doors of this size'), DEFAULTS.quantity),
    width: v.exactOptional(positive('over all')),
    height: v.exactOptional(positive('over all')),
    opening: v.exactOptional(
      about(
        group({ width: positive('of the carcase'), height: positive('of the carcase') }),
        'the opening of the carcase, instead of width and height',
      ),
    ),
    hung: v.exactOptional(about(v.picklist(['inset', 'overlay']), 'inset in the opening, or over its edges')),
    gap: v.exactOptional(orNothing('inset: between carcase and leaf')),
    overlay: v.exactOptional(orNothing('overlay: how far a leaf laps over the carcase')),
    between: v.exactOptional(orNothing('between two leaves')),
    leaves: v.exactOptional(about(count(10), 'leaves that fill the opening together')),
    stile: positive('width of the stiles'),
    rail: positive('width of the rails'),
    topRail: v.exactOptional(positive('width of the top rail, where it is not that of the rails')),
    bottomRail: v.exactOptional(positive('width of the bottom rail, where it is not that of the rails')),
    midRail: v.exactOptional(positive('width of the rails between panels, where it is not that of the muntins')),
    across: v.exactOptional(about(count(100), 'panels side by side; 1 if not said')),
    up: v.exactOptional(about(count(100), 'panels above each other; 1 if not said')),
    columns: v.exactOptional(openingSizes(units, 'widths of the openings from the left')),
    rows: v.exactOptional(openingSizes(units, 'heights of the openings from the top')),
    grain: v.optional(about(v.picklist(['up', 'across']), 'which way the grain of the panels runs'), DEFAULTS.grain),
    muntin: v.optional(orNothing('width of the uprights between panels'), millimetres(DEFAULTS.muntin)),
    head: v.exactOptional(about(shapedHeadSchema(units), "a shaped head, as the top rail's sight edge shows it")),
  });
}

function shapedHeadSchema(units: Units) {
  const { positive } = lengthsIn(units);
  return group({
    shape: about(v.picklist(['arch', 'cathedral', 'outline']), 'arch, cathedral or outline'),
    path: v.exactOptional(about(pathText(), 'outline: SVG path data from the left side of the opening to the right')),
    rise: v.exactOptional(positive('from the springing to the apex of the sight edge')),
    crown: v.exactOptional(positive('cathedral: radius of the round arc in the middle')),
    ears: v.exactOptional(positive('cathedral: radius of the hollow arcs beside it')),
  });
}

/** Openings by their sizes; those that are `rest` share what is left. */
function openingSizes(units: Units, what: string) {
  const size = v.union([v.literal('rest'), length(units, { above: 0 })], 'a length above 0, or rest');
  return about(v.pipe(v.array(size), v.minLength(1), v.maxLength(100)), `${what}, a length or rest each`);
}
