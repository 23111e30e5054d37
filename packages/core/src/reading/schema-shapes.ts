import * as v from 'valibot';
import type { Units } from '../measure/length.ts';

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
  return { ...schema, '~run': refuseLists(schema, schema['~run'].bind(schema)) } as Group<E>;
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

/** A list to JavaScript is also an object, so without this it would be read as a group with the keys 0, 1, 2. */
function refuseLists<S extends v.GenericSchema>(schema: S, run: S['~run']): S['~run'] {
  return (dataset, config) => {
    if (!Array.isArray(dataset.value)) return run(dataset, config);
    v._addIssue(schema, 'type', dataset as never, config);
    return dataset as ReturnType<S['~run']>;
  };
}
