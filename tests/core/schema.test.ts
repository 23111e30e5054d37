import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { buildSchemas } from '../../packages/core/tools/json-schema.ts';

const SHIPPED = new URL('../../packages/core/schema/', import.meta.url);

it.each(Object.entries(buildSchemas()))('ships %s as the code has it (npm run schema writes it)', (name, text) => {
  expect(readFileSync(new URL(name, SHIPPED), 'utf8')).toBe(text);
});

it('tells an editor the figures, choices and needed keys of a job', () => {
  const job = JSON.parse(buildSchemas()['job.schema.json']!);
  expect(job.required).toEqual(['fielded', 'panel', 'frame', 'cuts']);
  expect(job.additionalProperties).toBe(false);
  expect(job.properties.panel.properties.thickness).toEqual({
    type: ['number', 'string'],
    description: 'planed thickness: what the cutters are set for',
  });
  expect(job.properties.cuts.items.properties.run.enum).toEqual(['under', 'over']);
  expect(job.properties.doors.items.properties.quantity).toMatchObject({
    type: 'integer',
    minimum: 1,
    maximum: 10_000,
  });
});
