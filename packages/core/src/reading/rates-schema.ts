import * as v from 'valibot';
import { DEFAULTS } from '../job/defaults.ts';
import type { Rates } from '../shop/rates.ts';
import { number } from './figures.ts';
import { about, group, named } from './schema-shapes.ts';
import { currency, textLine } from './texts.ts';

/** The shop's prices and times: what a quote is made from. */
export function ratesSchema(): v.GenericSchema<unknown, Rates> {
  const price = (what: string) => about(number({ least: 0, most: 1e9 }, 'a price'), what);
  const hours = (what: string) => about(number({ least: 0, most: 1e5 }, 'a number of hours'), what);
  const percent = (what: string) => about(number({ least: 0, most: 1000 }, 'a percentage'), what);
  return group({
    currency: v.exactOptional(about(currency(), 'ISO 4217 code of the currency, such as EUR')),
    hour: v.exactOptional(price('price of an hour')),
    wood: v.optional(about(named(number({ least: 0, most: 1e9 }, 'a price')), 'price of a m³ ordered, by wood'), {}),
    setUp: v.exactOptional(hours('hours for each set-up')),
    metresPerHour: v.exactOptional(
      about(number({ above: 0, most: 1e6 }, 'metres an hour'), 'metres of edge run in an hour'),
    ),
    door: v.exactOptional(hours('hours for each door')),
    finish: v.exactOptional(price('price of a m² of finished face')),
    knife: v.exactOptional(price('price of each new knife')),
    margin: v.optional(percent('% added to the net sum'), DEFAULTS.rates.margin),
    tax: v.exactOptional(group({ name: about(textLine('a name'), 'such as VAT'), rate: percent('%') })),
    validDays: v.optional(
      about(number({ least: 1, most: 3650, whole: true }, 'a whole number of days'), 'how long a quote holds'),
      DEFAULTS.rates.validDays,
    ),
    deposit: v.exactOptional(
      about(number({ least: 0, most: 100 }, 'a percentage'), '% of the total asked for with the order'),
    ),
    terms: v.optional(
      about(v.pipe(v.array(textLine('a paragraph', 2000)), v.maxLength(50)), 'paragraphs of terms'),
      [],
    ),
  }) as unknown as v.GenericSchema<unknown, Rates>;
}
