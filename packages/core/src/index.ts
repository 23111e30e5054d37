export type { Chain, Curve } from './geometry/curve.ts';
export type * from './job/job.ts';
export type * from './job/report.ts';
export type { Fault, Problem, Severity } from './problem.ts';
