// A schema of ours, made with the library's steps: any input, a figure out, or a fault with its words.
import * as v from 'valibot';
import type { FaultCode } from '../problem/codes.ts';
import type { Said } from '../problem/problem.ts';
import type { Bounds } from './bounds.ts';

/** What a figure is, so that the published JSON Schema can say how it may be written. */
export type FigureForm = 'length' | 'angle' | 'presentation' | 'moisture' | 'temperature' | 'number' | 'text';

/** A schema of ours: any input, a figure out. */
export type FigureSchema<T = number> = v.GenericSchema<unknown, T>;

/** What is wrong with a figure: the fault's code, what it is (after "is"), and what to write. */
export interface FigureFault {
  readonly code: FigureFaultCode;
  readonly read: Said;
  readonly wanted: Said;
}

export type FigureFaultCode = Extract<
  FaultCode,
  'wrong-type' | 'empty-value' | 'not-a-length' | 'not-an-angle' | 'not-a-number' | 'out-of-range' | 'unknown-choice'
>;

type About = { readonly form: FigureForm } & Pick<Bounds, 'least' | 'above' | 'most' | 'whole'>;

/** A figure that was read, or what is wrong with it. */
export type Reading<T> = { readonly value: T } | FigureFault;

/** The type of a figure's issue, whose requirement is its `FigureFault`. */
export const FIGURE_ISSUE = 'figure';

/**
 * A figure read from what the file holds by `read`. Its fault is the issue's requirement, to be put into words with its
 * place; `about` tells the published JSON Schema what may be written.
 */
export function figure<T>(about: About, read: (input: unknown) => Reading<T>): FigureSchema<T> {
  return v.pipe(v.any(), readingOf(read), v.metadata({ ...about }));
}

/** The step of a schema that reads a figure: the library's own steps keep texts alone of what is wrong. */
function readingOf<T>(read: (input: unknown) => Reading<T>): v.BaseTransformation<unknown, T, v.BaseIssue<unknown>> {
  const kind = { kind: 'transformation', type: FIGURE_ISSUE, reference: readingOf, async: false } as const;
  return {
    ...kind,
    '~run'(dataset: v.OutputDataset<unknown, v.BaseIssue<unknown>>, config: v.Config<v.BaseIssue<unknown>>) {
      const reading = read(dataset.value);
      if ('value' in reading) return { ...dataset, value: reading.value };
      v._addIssue({ ...kind, requirement: reading } as unknown as Context, 'figure', dataset, config);
      return { ...dataset, typed: false };
    },
  } as v.BaseTransformation<unknown, T, v.BaseIssue<unknown>>;
}

type Context = Parameters<typeof v._addIssue>[0];
