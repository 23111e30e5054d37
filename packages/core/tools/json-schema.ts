// Writes schema/job.schema.json and schema/shop.schema.json from the one schema in code: `npm run schema`.
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type JsonSchema, toJsonSchema } from '@valibot/to-json-schema';
import type * as v from 'valibot';
import type { Bounds } from '../src/reading/bounds.ts';
import { FIGURE_ISSUE, type FigureForm } from '../src/reading/figure-schema.ts';
import { jobSchema } from '../src/reading/job-schema.ts';
import { shopSchema } from '../src/reading/shop-schema.ts';

const FOLDER = fileURLToPath(new URL('../schema/', import.meta.url));

/** How each kind of figure may be written, for an editor to check before the tool does. */
const FORMS: Readonly<Record<FigureForm, JsonSchema>> = {
  length: { type: ['number', 'string'] },
  angle: { type: ['number', 'string'] },
  presentation: { anyOf: [{ enum: ['flat', 'on-edge'] }, { type: ['number', 'string'] }] },
  moisture: { type: ['number', 'string'] },
  temperature: { type: ['number', 'string'] },
  number: { type: 'number' },
  text: { type: ['string', 'integer'] },
};

/** Keys of `About`. */
const NOTES: readonly string[] = ['form', 'least', 'above', 'most', 'whole'];

/** The published schemas, by the name of their files. */
export function buildSchemas(): Readonly<Record<string, string>> {
  return {
    'job.schema.json': build(jobSchema('mm'), 'Fielded job file'),
    'shop.schema.json': build(shopSchema('mm'), 'Fielded shop file'),
  };
}

function build(schema: v.GenericSchema, title: string): string {
  const { $schema, ...rest } = toJsonSchema(schema, {
    ignoreActions: [FIGURE_ISSUE],
    overrideSchema: ({ valibotSchema, jsonSchema }) =>
      valibotSchema.type === 'object_with_rest' ? { ...jsonSchema, additionalProperties: false } : jsonSchema,
    overrideAction: ({ valibotAction, jsonSchema }) => {
      if (valibotAction.type !== 'metadata') return jsonSchema;
      // The converter copies our notes as they are; what they mean takes their place.
      const kept = Object.fromEntries(Object.entries(jsonSchema).filter(([key]) => !NOTES.includes(key)));
      return { ...kept, ...describeFigure((valibotAction as v.MetadataAction<unknown, About>).metadata) };
    },
  });
  return `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`;
}

/** What a figure's schema says of itself. */
type About = { readonly form: FigureForm } & Bounds & Record<string, unknown>;

/** The form of a figure; bounds only where the number stands as written, without a unit. */
function describeFigure({ form, least, above, most, whole }: About): JsonSchema {
  if (form !== 'number') return FORMS[form];
  return {
    type: whole ? 'integer' : 'number',
    ...(least !== undefined && { minimum: least }),
    ...(above !== undefined && { exclusiveMinimum: above }),
    ...(most !== undefined && { maximum: most }),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, text] of Object.entries(buildSchemas())) writeFileSync(FOLDER + name, text);
}
