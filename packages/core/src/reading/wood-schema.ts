import * as v from 'valibot';
import { number } from './figures.ts';
import { about, group } from './schema-shapes.ts';
import { textLine } from './texts.ts';

/** A wood by its name, or with its own figures. */
export function speciesSchema(): v.GenericSchema {
  return v.union([ownWood({ name: about(textLine('a name'), 'what it is called') }), textLine('a wood')]);
}

/** A wood's own figures, `more` beside them: coefficients per 1 % of moisture, density in kg/m³ at 12 %. */
export function ownWood(more: v.ObjectEntries): v.GenericSchema {
  const coefficient = (what: string) => about(number({ above: 0, most: 0.02 }, 'a part of the size'), what);
  return group({
    ...more,
    tangential: coefficient('change along the growth rings per 1 % of moisture, as a part of the size'),
    radial: coefficient('change across the growth rings per 1 % of moisture, as a part of the size'),
    density: v.exactOptional(about(number({ above: 0, most: 2000 }, 'a density'), 'kg/m³ at 12 % of moisture')),
  }) as unknown as v.GenericSchema;
}
