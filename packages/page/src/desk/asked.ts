import { evaluate, type Job, type Report, type Solved, type SolvedByTwo, solve, solveByTwo } from '@fielded/core';

/** A question answered beside the page: the whole report, the one size that gives a wanted figure, or the two that give a fit and a face. */
export type Asked =
  | { readonly ask: 'whole'; readonly job: Job }
  | {
      readonly ask: 'one';
      readonly job: Job;
      readonly wanted: Parameters<typeof solve>[1];
      /** What sizes are called here, by their places in the job file. */
      readonly names: readonly (readonly [path: string, name: string])[];
    }
  | { readonly ask: 'two'; readonly job: Job; readonly wanted: Parameters<typeof solveByTwo>[1] };

/** The answer to each of them. */
export interface Answers {
  readonly whole: Report;
  readonly one: Solved;
  readonly two: SolvedByTwo;
}

/** Computes the answer on the thread that calls this. */
export function answerAsked<K extends Asked['ask']>(asked: Extract<Asked, { ask: K }>): Answers[K];
export function answerAsked(asked: Asked): Answers[Asked['ask']] {
  if (asked.ask === 'whole') return evaluate(asked.job);
  if (asked.ask === 'two') return solveByTwo(asked.job, asked.wanted);
  const names = new Map(asked.names);
  return solve(asked.job, asked.wanted, { ...asked.job, namePlace: (path) => names.get(path) ?? path });
}
