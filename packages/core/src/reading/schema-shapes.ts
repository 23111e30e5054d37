import * as v from 'valibot';
import type { Units } from '../measure/length.ts';
import { type LengthWord, length } from './figures.ts';

/** The one version of the two formats there is. */
export const VERSION = 1;

type Group<E extends v.ObjectEntries> = v.ObjectWithRestSchema<E, v.NeverSchema<undefined>, undefined>;
type Named<S extends v.GenericSchema> = v.RecordSchema<v.StringSchema<undefined>, S, undefined>;

/**
 * A group of keys with no others beside them. An issue of it holds as its requirement what its keys are for, by key; each unknown key is an
 * issue of its own, of type `never`, whose requirement is the list of the known ones.
 */
export function group<const E extends v.ObjectEntries>(entries: E): Group<E> {
  const unknown = { ...v.never(), requirement: Object.keys(entries) };
  const schema = { ...v.objectWithRest(entries, unknown), requirement: describeKeys(entries) };
  return { ...schema, '~run': runOnce(schema, refuseLists(schema, schema['~run'].bind(schema))) } as Group<E>;
}

function describeKeys(entries: v.ObjectEntries): Readonly<Record<string, string>> {
  const described = Object.entries(entries).map(([key, entry]) => [
    key,
    v.getDescription(entry as v.GenericSchema) ?? '',
  ]);
  return Object.fromEntries(described);
}

/** The same maker, which makes what it makes of each unit once: a schema takes longer to make than a file to be read by it. */
export function oncePerUnit<S>(make: (units: Units) => S): (units: Units) => S {
  const made = new Map<Units, S>();
  return (units) => {
    const schema = made.get(units) ?? make(units);
    made.set(units, schema);
    return schema;
  };
}

/** A schema with the words that say what it is for. */
export function about<S extends v.GenericSchema>(
  schema: S,
  what: string,
): v.SchemaWithPipe<readonly [S, v.DescriptionAction<v.InferOutput<S>, string>]> {
  return v.pipe(schema, v.description(what));
}

type LengthAbout = ReturnType<typeof about<ReturnType<typeof length>>>;

/** Lengths above 0 and lengths of 0 or more, each with what it is for. */
export function lengthsIn(units: Units): {
  positive(what: string, word?: LengthWord): LengthAbout;
  orNothing(what: string): LengthAbout;
} {
  return {
    positive: (what: string, word?: LengthWord) => about(length(units, { above: 0 }, word), what),
    orNothing: (what: string) => about(length(units, { least: 0 }), what),
  };
}

/** Things by their names. */
export function named<S extends v.GenericSchema>(value: S): Named<S> {
  const schema = v.record(v.string(), value);
  return { ...schema, '~run': refuseLists(schema, schema['~run'].bind(schema)) };
}

/**
 * One of three groups: for `shape: outline` the drawn one, or the one in a file where that is named; the sized one for any other shape.
 *
 * A plain variant would stop at a shape it does not know; this goes on to the sizes, so that all faults come at once.
 */
export function byShape(drawn: v.GenericSchema, inFile: v.GenericSchema, sized: v.GenericSchema): v.GenericSchema {
  const schema = v.variant('shape', [drawn, inFile, sized] as never) as unknown as v.GenericSchema;
  const run: v.GenericSchema['~run'] = (dataset, config) => {
    const { shape, path, file } = (dataset.value ?? {}) as { shape?: unknown; path?: unknown; file?: unknown };
    const outline = path === undefined && file !== undefined ? inFile : drawn;
    return (shape === 'outline' ? outline : sized)['~run'](dataset, config);
  };
  return { ...schema, '~run': run };
}

/** What each group of some data was found to hold by its schema; for data that is never changed in place. */
export type CheckedGroups = WeakMap<object, { readonly schema: v.GenericSchema; readonly held: unknown }>;

/** How data is checked: groups in `checked` are not gone over again, and those found sound are added. */
export interface CheckConfig extends v.Config<v.BaseIssue<unknown>> {
  readonly checked?: CheckedGroups;
}

function runOnce<S extends v.GenericSchema>(schema: S, run: S['~run']): S['~run'] {
  return (dataset, config) => {
    const { checked } = config as CheckConfig;
    const given = dataset.value;
    if (checked === undefined || typeof given !== 'object' || given === null) return run(dataset, config);
    const known = checked.get(given);
    if (known?.schema === schema) return { typed: true, value: known.held };
    const found = run(dataset, config);
    if (found.issues === undefined) checked.set(given, { schema, held: found.value });
    return found;
  };
}

/** A list to JavaScript is also an object, so without this it would be read as a group with the keys 0, 1, 2. */
function refuseLists<S extends v.GenericSchema>(schema: S, run: S['~run']): S['~run'] {
  return (dataset, config) => {
    if (!Array.isArray(dataset.value)) return run(dataset, config);
    v._addIssue(schema, 'type', dataset as never, config);
    return dataset as ReturnType<S['~run']>;
  };
}
